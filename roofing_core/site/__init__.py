"""What the place asks of a roof, and what the roof asks of the building: wind, air, loads."""
