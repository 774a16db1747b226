"""What is asked of a roof, by whom: each rule with its limit, editions, source and cure."""
