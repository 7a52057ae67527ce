"""Advice before anything is bought or poured: what fits, what to move so that it does, and what that saves.

The one who owns a dimension decides; this room proposes, with figures.
"""
