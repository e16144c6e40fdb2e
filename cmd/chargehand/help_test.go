package main

import (
	"bytes"
	"flag"
	"strings"
	"testing"
)

// The help of each subcommand names what a flag takes, and only of one that takes
// something; no line of it is wider than a terminal.
func TestHelpNamesWhatAFlagTakes(t *testing.T) {
	for _, c := range append(commands(), screenCommand()) {
		flags := newFlags(c.name, new(common))
		c.setUp(flags)
		var out bytes.Buffer
		help(&out, c, flags)
		for _, l := range strings.Split(out.String(), "\n") {
			if len([]rune(l)) > helpWidth {
				t.Errorf("%s: %q is wider than %d", c.name, l, helpWidth)
			}
			if strings.Contains(l, "`") {
				t.Errorf("%s: a backquote in %q", c.name, l)
			}
		}
		flags.VisitAll(func(f *flag.Flag) {
			quoted := strings.Count(f.Usage, "`") == 2
			b, isBool := f.Value.(interface{ IsBoolFlag() bool })
			if alone := isBool && b.IsBoolFlag(); alone == quoted {
				t.Errorf("%s --%s: alone %t, but %q", c.name, f.Name, alone, f.Usage)
			}
		})
	}
}
