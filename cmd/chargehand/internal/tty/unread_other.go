//go:build unix && !linux

package tty

// unread is not asked where the system has another way to tell it: a wait must do.
func (s *Terminal) unread() (int, error) { return 0, nil }
