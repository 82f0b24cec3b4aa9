"""Complaints."""
