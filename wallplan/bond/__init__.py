"""bond"""
