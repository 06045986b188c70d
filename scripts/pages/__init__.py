"""The pages of the reference that are made from the program, and the pictures it draws; one file each."""
