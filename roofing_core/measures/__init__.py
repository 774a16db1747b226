"""Text in, text out: units, lengths as people write them, counting, faults and sentences."""
