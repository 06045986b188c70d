"""Tests of Tapeline."""
