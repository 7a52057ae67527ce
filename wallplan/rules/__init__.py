"""rules"""
