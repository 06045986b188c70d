"""The bake of the form: from files of human shape data to the stand's own small file."""
