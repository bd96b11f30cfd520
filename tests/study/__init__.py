"""Tests of the study's own rooms."""
