"""What every command is made with."""
