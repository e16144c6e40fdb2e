// Command chargehand keeps the record of a smelt in a small charcoal-fired
// clay shaft furnace, does the sums live, and shows them on one screen.
//
// Without a subcommand it opens the screen. This package only wires: clock,
// book, screen and the subcommands; it does no sums of its own.
package main

import (
	"os"

	_ "chargehand/tui/ground" // before anything that asks the terminal
)

func main() {
	os.Exit(run(os.Args[1:], world{
		in: os.Stdin, out: os.Stdout, err: os.Stderr, getenv: os.Getenv, clock: systemClock(),
	}))
}
