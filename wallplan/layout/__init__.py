"""layout"""
