package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"chargehand/model/words"
)

// common are the flags that every subcommand takes.
type common struct {
	book  string
	json  bool
	plain bool
	light bool
	dark  bool
	ascii bool
}

// newFlags is a set of flags that holds the common ones. What was given before
// the subcommand stays, unless it is given again after it.
func newFlags(name string, c *common) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&c.book, "book", c.book, words.FlagBook)
	flags.BoolVar(&c.json, "json", c.json, words.FlagJSON)
	flags.BoolVar(&c.plain, "plain", c.plain, words.FlagPlain)
	flags.BoolVar(&c.light, "light", c.light, words.FlagLight)
	flags.BoolVar(&c.dark, "dark", c.dark, words.FlagDark)
	flags.BoolVar(&c.ascii, "ascii", c.ascii, words.FlagASCII)
	return flags
}

// bookPath is where the book stands: as given, else in the user's data folder
// (the XDG base directory specification; on other systems where the user's
// settings stand).
func bookPath(c common, getenv func(string) string) (string, error) {
	if c.book != "" {
		return c.book, nil
	}
	if dir := getenv("XDG_DATA_HOME"); dir != "" {
		if !filepath.IsAbs(dir) {
			return "", wrongUse{errors.New(words.NotAbsolute("XDG_DATA_HOME", dir))}
		}
		return filepath.Join(dir, "chargehand", "book.db"), nil
	}
	if home := getenv("HOME"); home != "" {
		if !filepath.IsAbs(home) {
			return "", wrongUse{errors.New(words.NotAbsolute("HOME", home))}
		}
		return filepath.Join(home, ".local", "share", "chargehand", "book.db"), nil
	}
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", wrongUse{fmt.Errorf("%s", words.NoDataFolder)}
	}
	return filepath.Join(dir, "chargehand", "book.db"), nil
}

// one is the only operand of a subcommand.
func one(operands []string, what string) (string, error) {
	if len(operands) != 1 {
		return "", wrongUse{fmt.Errorf("%s", words.WantsOne(what, len(operands)))}
	}
	return operands[0], nil
}

func none(operands []string) error {
	if len(operands) > 0 {
		return wrongUse{fmt.Errorf("%s", words.TakesNone(operands[0]))}
	}
	return nil
}
