package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"

	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/disk"
)

// wing is what the subcommands of stores, furnace, plan and forge share: taking entries of
// the house from a file of JSON lines, all or none, and printing an example of each
// kind.
type wing struct {
	where    entry.Places // where its kinds are keyed
	examples func() []entry.Event
	from     string
	template bool
}

// setUp sets up such a subcommand, which shows something where neither is asked for.
func (g wing) setUp(show func(world, common) error) func(*flag.FlagSet) func(world, common, []string) error {
	return func(flags *flag.FlagSet) func(world, common, []string) error {
		flags.StringVar(&g.from, "from", "", words.FlagFrom)
		flags.BoolVar(&g.template, "template", false, words.FlagTemplate)
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			if done, err := g.does(w, c); done {
				return err
			}
			return show(w, c)
		}
	}
}

// does what --from or --template ask for, if one of them is given.
func (g *wing) does(w world, c common) (done bool, err error) {
	switch {
	case g.template && g.from != "":
		return true, wrongUse{errors.New(words.FromOrTemplate)}
	case g.template:
		return true, g.print(w)
	case g.from != "":
		return true, g.take(w, c)
	}
	return false, nil
}

// houseLine is one line of such a file.
type houseLine struct {
	Happened string          `json:"happened,omitempty"`
	Kind     entry.Kind      `json:"kind"`
	Event    json.RawMessage `json:"event"`
}

// print writes an example of each kind, which --from takes back.
func (g *wing) print(w world) error {
	at := w.clock().Wall.Format(time.RFC3339)
	for _, ev := range g.examples() {
		text, err := json.Marshal(ev)
		if err != nil {
			return err
		}
		line, err := json.Marshal(houseLine{at, ev.Kind(), text})
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintln(w.out, string(line)); err != nil {
			return err
		}
	}
	return nil
}

// take keeps the lines of the file, or none of them.
func (g *wing) take(w world, c common) error {
	f, err := disk.Open(g.from)
	if err != nil {
		return errors.New(words.CannotRead(g.from, err))
	}
	defer f.Close()
	entries, err := g.read(f, w.clock().Wall)
	if err != nil {
		return err
	}
	var refused error
	book, err := writer(w, c, func(a persist.Ack) {
		if len(a.Entries) > 0 {
			refused = errors.Join(refused, a.Err)
		}
	})
	if err != nil {
		return err
	}
	book.Keep(entries...)
	err = shut(w, book) // waits for what became of them
	if err := errors.Join(refused, err); err != nil {
		return err
	}
	if c.json {
		return json.NewEncoder(w.out).Encode(map[string]int{"entries": len(entries)})
	}
	_, err = fmt.Fprintln(w.out, words.HouseTaken(g.from, len(entries)))
	return err
}

// mostLines bounds such a file.
const mostLines = 20_000

// read decodes and checks every line. Empty lines and those that begin with # are
// let be.
func (g *wing) read(in io.Reader, now time.Time) ([]entry.Entry, error) {
	var all []entry.Entry
	lines := bufio.NewScanner(in)
	lines.Buffer(nil, entry.MaxBytes)
	n := 0
	bad := func(err any) error { return errors.New(words.BadHouseLine(g.from, n, err)) }
	for lines.Scan() {
		n++
		text := bytes.TrimSpace(lines.Bytes())
		if len(text) == 0 || text[0] == '#' {
			continue
		}
		if len(all) == mostLines {
			return nil, bad(words.TooManyLines(mostLines))
		}
		e, err := g.one(text, now)
		if err != nil {
			return nil, bad(err)
		}
		all = append(all, e)
	}
	if err := lines.Err(); err != nil {
		n++
		return nil, bad(err)
	}
	if len(all) == 0 {
		return nil, errors.New(words.NothingToTake(g.from))
	}
	return all, nil
}

func (g *wing) one(text []byte, now time.Time) (entry.Entry, error) {
	var l houseLine
	strict := json.NewDecoder(bytes.NewReader(text))
	strict.DisallowUnknownFields()
	if err := strict.Decode(&l); err != nil {
		return entry.Entry{}, err
	}
	t := entry.TraitsOfKind(l.Kind)
	if !t.Known() || t.Keyed&g.where == 0 {
		return entry.Entry{}, errors.New(words.NotOfThisWing(l.Kind, g.kinds()))
	}
	at := now
	if l.Happened != "" {
		var err error
		if at, err = time.Parse(time.RFC3339, l.Happened); err != nil {
			return entry.Entry{}, errors.New(words.BadHappened(l.Happened))
		}
	}
	wire, err := json.Marshal(map[string]any{"v": entry.Version, "stream": entry.House, "seq": 1, "happened": at.Format(time.RFC3339Nano), "kind": l.Kind, "event": l.Event})
	if err != nil {
		return entry.Entry{}, err
	}
	e, err := entry.Decode(wire)
	if err != nil {
		return entry.Entry{}, err
	}
	if err := entry.Check(e.Event); err != nil {
		return entry.Entry{}, err
	}
	if err := possible(e.Event); err != nil {
		return entry.Entry{}, err
	}
	e.Seq = 0 // the writer numbers it
	return e, nil
}

// possible refuses what no ore can be, before it is kept of a lot: everything that
// is reckoned of the lot would rest on it.
func possible(ev entry.Event) error {
	var a entry.Assay
	switch ev := ev.(type) {
	case entry.Assay:
		a = ev
	case entry.LotStored:
		if ev.Lot.Assay != nil {
			a = *ev.Lot.Assay
		}
	}
	p := doubt.AssayOf(a, false)
	if iron, known := p.Iron(); known && iron > p.CeilingOfIron()+0.05 {
		return errors.New(words.MoreIronThanCanBe(iron, p.CeilingOfIron()))
	}
	return nil
}

func (g *wing) kinds() string {
	var all []string
	for _, k := range entry.Kinds() {
		if entry.TraitsOfKind(k).Keyed&g.where != 0 {
			all = append(all, string(k))
		}
	}
	return strings.Join(all, ", ")
}
