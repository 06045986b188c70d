"""Tests of alterations: what each keeps."""
