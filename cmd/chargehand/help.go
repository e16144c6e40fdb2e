package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/words"
)

func helpCommand() command {
	return command{name: "help", usage: "[SUBCOMMAND]", does: words.HelpDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, _ common, operands []string) error {
			if len(operands) == 0 {
				return printHelp(w)
			}
			c, rest, err := choose(operands)
			if err != nil || len(rest) > 0 {
				return wrongUse{errors.New(words.NoSuchCommand(strings.Join(operands, " ")))}
			}
			flags := newFlags(c.name, new(common))
			c.setUp(flags)
			help(w.out, c, flags)
			return nil
		}
	}}
}

// printHelp lists the subcommands.
func printHelp(w world) error {
	fmt.Fprintf(w.out, "%s\n\n", words.ProgramDoes)
	for _, c := range append([]command{screenCommand()}, commands()...) {
		fmt.Fprintf(w.out, "  %s\n%s\n", called(c), indented(c.does, 6))
	}
	_, err := fmt.Fprintf(w.out, "\n%s\n", words.HelpMore)
	return err
}

// called is how a subcommand is called.
func called(c command) string {
	s := "chargehand"
	for _, part := range []string{c.name, c.usage} {
		if part != "" {
			s += " " + part
		}
	}
	return s
}

// help prints one subcommand's use and its flags, each with what it takes: the word that
// stands between backquotes in its usage.
func help(out io.Writer, c command, flags *flag.FlagSet) {
	fmt.Fprintf(out, "%s\n%s\n\n", called(c), indented(c.does, 2))
	flags.VisitAll(func(f *flag.Flag) {
		value, usage := flag.UnquoteUsage(f)
		named := strings.TrimRight("  --"+f.Name+" "+strings.ToUpper(value), " ")
		usage = indented(usage, flagWidth)
		if len(named) < flagWidth {
			named, usage = fmt.Sprintf("%-*s", flagWidth, named), strings.TrimLeft(usage, " ")
		} else {
			named += "\n"
		}
		fmt.Fprintln(out, named+usage)
	})
}

// helpWidth is how wide the help is, in cells: it is read in any terminal.
const helpWidth = 80

// flagWidth is where the words begin that stand behind a flag and its value; behind a
// longer one they begin a line of their own.
const flagWidth = 19

// noBreak stands for a hyphen while lines are made: a flag is not torn behind its dashes.
const noBreak = "\u2011"

// indented is a text in lines that fit, each behind so many blanks.
func indented(text string, by int) string {
	blanks := strings.Repeat(" ", by)
	text = ansi.Wordwrap(strings.ReplaceAll(text, "-", noBreak), helpWidth-by, "")
	return blanks + strings.NewReplacer("\n", "\n"+blanks, noBreak, "-").Replace(text)
}
