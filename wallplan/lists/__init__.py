"""lists"""
