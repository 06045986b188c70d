"""The page in a real browser, with the server as a process of its own."""
