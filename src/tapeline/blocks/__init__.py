"""Method pages: each drafts one block or part, and reads like a page of a textbook."""
