package tty

import (
	"fmt"
	"os"

	"golang.org/x/sys/unix"
)

// unread is how many bytes of what was typed the program has not read yet.
func (s *Terminal) unread() (int, error) {
	n, err := unix.IoctlGetInt(int(s.master.Fd()), unix.TIOCGPTN)
	if err != nil {
		return 0, err
	}
	slave, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDONLY|unix.O_NOCTTY|unix.O_NONBLOCK, 0)
	if err != nil {
		return 0, err
	}
	defer slave.Close()
	return unix.IoctlGetInt(int(slave.Fd()), unix.TIOCINQ)
}
