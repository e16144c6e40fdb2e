package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// world is everything outside the program that a subcommand may touch.
type world struct {
	in     *os.File
	out    io.Writer
	err    io.Writer
	getenv func(string) string
	clock  func() entry.Stamp
	told   map[string]bool // faults of the book that were said
}

// Exit codes.
const (
	exitWell   = 0
	exitFailed = 1
	exitWrong  = 2 // wrong use
)

// command is one subcommand. Its flags are set up by a closure, so that each
// stands whole in the file that bears its name.
type command struct {
	name  string
	does  string // one line of help
	usage string // what stands after its name
	setUp func(*flag.FlagSet) func(world, common, []string) error
}

// commands are all subcommands, in the order of the job: before, on and after the day,
// then the book itself.
func commands() []command {
	return []command{
		storesCommand(), furnaceCommand(), planCommand(), sheetCommand(), assayCommand(), rehearseCommand(),
		watchCommand(), stateCommand(), aheadCommand(),
		smeltsCommand(), replayCommand(), compareCommand(), accountCommand(), forgeCommand(), reportCommand(), exportCommand(), importCommand(), learnCommand(), hindcastCommand(),
		checkCommand(), rescueCommand(), versionCommand(),
	}
}

// run does what the arguments say and gives the exit code. The common flags may
// stand before the subcommand or after it.
func run(args []string, w world) int {
	w.told = map[string]bool{}
	var opts common
	top := newFlags("chargehand", &opts)
	if err := top.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return finish(w, printHelp(w))
		}
		return finish(w, wrongUse{fmt.Errorf("%s; %s", words.FlagTrouble(err.Error()), words.SeeHelp(""))})
	}
	c, rest, err := choose(top.Args())
	if err != nil {
		return finish(w, err)
	}
	flags := newFlags(c.name, &opts)
	do := c.setUp(flags)
	operands, err := parse(flags, rest)
	if errors.Is(err, flag.ErrHelp) {
		help(w.out, c, flags)
		return exitWell
	}
	if err != nil {
		return finish(w, wrongUse{fmt.Errorf("%s: %s; %s", c.name, words.FlagTrouble(err.Error()), words.SeeHelp(c.name))})
	}
	return finish(w, do(w, opts, operands))
}

// choose finds the subcommand; none is the screen.
func choose(args []string) (command, []string, error) {
	if len(args) == 0 {
		return screenCommand(), nil, nil
	}
	for _, c := range append(commands(), helpCommand()) {
		if c.name == args[0] {
			return c, args[1:], nil
		}
	}
	return command{}, nil, wrongUse{errors.New(words.NoSuchCommand(args[0]))}
}

// parse reads flags and operands in any order.
func parse(flags *flag.FlagSet, args []string) ([]string, error) {
	var operands []string
	for {
		if err := flags.Parse(args); err != nil {
			return nil, err
		}
		rest := flags.Args()
		if len(rest) == 0 {
			return operands, nil
		}
		if n := len(args) - len(rest); n > 0 && args[n-1] == "--" {
			return append(operands, rest...), nil
		}
		operands, args = append(operands, rest[0]), rest[1:]
	}
}

// wrongUse is an error of the caller's.
type wrongUse struct{ error }

func (w wrongUse) Unwrap() error { return w.error }

// finish says what went wrong, in one line, and gives the exit code.
func finish(w world, err error) int {
	if err == nil {
		return exitWell
	}
	fmt.Fprintln(w.err, "chargehand:", words.OneLine(err.Error()))
	if errors.As(err, new(wrongUse)) {
		return exitWrong
	}
	return exitFailed
}
