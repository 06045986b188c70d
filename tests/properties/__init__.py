"""Properties that hold for every wearer: drafted for random, stretched and odd bodies."""
