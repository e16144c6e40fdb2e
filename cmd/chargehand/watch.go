package main

import (
	"flag"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/invented/week"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/tui"
	"chargehand/tui/screen"
)

func watchCommand() command {
	return command{name: "watch", usage: "[SMELT]", does: words.WatchDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if len(operands) == 0 {
				return watchOnScreen(w, c, "", screen.Fire)
			}
			return watchNamed(w, c, operands, screen.Fire)
		}
	}}
}

func replayCommand() command {
	return command{name: "replay", usage: "SMELT", does: words.ReplayDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			return watchNamed(w, c, operands, screen.Replay)
		}
	}}
}

// watchNamed watches the one smelt that is named.
func watchNamed(w world, c common, operands []string, on screen.ID) error {
	name, err := one(operands, words.ASmelt)
	if err != nil {
		return err
	}
	if name != invented.ID {
		r, err := reader(w, c)
		if err != nil {
			return err
		}
		if name, err = match(r, name); err != nil {
			return err
		}
	}
	return watchOnScreen(w, c, name, on)
}

// watchOnScreen runs a screen that only shows what is in the book, and what another program
// keeps in it meanwhile.
func watchOnScreen(w world, c common, smelt string, on screen.ID) error {
	out, err := readyTerminal(w)
	if err != nil {
		return err
	}
	r, err := reader(w, c)
	if err != nil {
		return err
	}
	clock, keys := clockAndKeys(w.clock)
	store := watchedBook{path: r.Path()}
	cfg := configOf(w, c, out, store, r.Path(), clock())
	cfg.Demo, cfg.Week = invented.Smelt, week.Entries
	cfg.Watching = &tui.Watching{Smelt: smelt, On: on, News: r.News().Since}
	_, _, err = onTerminal(w, out, nil, tui.Program(tui.New(cfg), store, clock), keys)
	return ending(err)
}

// watchedBook is a book that is only read. Each call reads it anew: screens ask beside each
// other.
type watchedBook struct{ path string }

func (b watchedBook) reader() (*persist.Reader, error) {
	return persist.OpenReader(b.path, persist.Options{Summarise: shelf.Of})
}

// Keep is never called: such a screen makes no entries.
func (watchedBook) Keep(...entry.Entry) {}

func (b watchedBook) Entries(stream string) ([]entry.Entry, []entry.Gap, error) {
	r, err := b.reader()
	if err != nil {
		return nil, nil, err
	}
	return entriesOf(r, stream)
}

func (b watchedBook) Smelts() ([]shelf.Summary, error) {
	r, err := b.reader()
	if err != nil {
		return nil, err
	}
	return smeltsOf(r)
}
