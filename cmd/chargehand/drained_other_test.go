//go:build unix && !linux

package main

// unread is not asked where the system has another way to tell it: a wait must do.
func (s *terminal) unread() (int, error) { return 0, nil }
