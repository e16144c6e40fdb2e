package tui_test

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

// place is something that may be open when an act is keyed: a list, a question, a field, a
// form, a row of it or a screen, reached by these keys.
type place struct {
	name, keys string
	d          *desk.Desk
}

// asks tells whether it takes what is typed, and as what.
func (p place) asks() (c screen.Choice, list bool, f screen.Field, field bool) {
	c, list = p.d.M.Dialog().(screen.Choice)
	f, field = p.d.M.Dialog().(screen.Field)
	return c, list, f, field
}

// typed are texts that lead on from a field to what it asks next, or is doubted.
var typed = []string{"12", "60", "500", ".2", "words", "12:00"}

// everyPlace walks from a desk by the keys themselves, and gives all that opens there and
// was not seen yet. What books on the way is no place: the act is done.
func everyPlace(from *desk.Desk, seen map[string]bool) []place {
	var places []place
	var visit func(d *desk.Desk, keys []string)
	visit = func(d *desk.Desk, keys []string) {
		open := d.M.Dialog()
		if open == nil || len(booked(d)) > 0 {
			return
		}
		label := open.Ask(d.M.Shared()).Label
		name := fmt.Sprintf("%s: %T %q", d.M.Active(), open, label)
		if c, is := open.(screen.Choice); is && len(c.Options) > 0 { // of lists of one title each that is another
			name += " " + c.Options[0].Help().Desc
		}
		if f, is := open.(screen.Field); is && f.Half(d.M.Shared()) != "" {
			name += " half typed"
		}
		name = figures.ReplaceAllString(name, "0")
		if seen[name] || len(keys) > 12 {
			return
		}
		seen[name] = true
		places = append(places, place{name, strings.Join(keys, " "), d})
		try := func(more ...string) {
			next := aside(d)
			next.Press(more...)
			visit(next, append(slices.Clone(keys), more...))
		}
		switch asks := open.(type) {
		case screen.Choice:
			for _, o := range asks.Options {
				try(o.Keys()[0])
			}
		case screen.Field:
			for _, o := range asks.Instead {
				try(o.Keys()[0])
			}
			for _, text := range typed {
				try(append(strings.Split(text, ""), "enter")...)
			}
			try("enter")
			try("1")
		}
	}
	for _, b := range append(from.M.Screen(from.M.Active()).Keys().All(), screen.Global.All()...) {
		d := aside(from)
		d.Press(b.Keys()[0])
		visit(d, []string{b.Keys()[0]})
	}
	return places
}

var figures = regexp.MustCompile(`[0-9.,]+`)

// burning is a desk at a fire with a charge in, all of it kept.
func burning(t *testing.T) *desk.Desk {
	d := desk.Practising(t)
	for range 12 {
		d.Press("c")
		d.Wait(10 * time.Minute)
	}
	return d
}

// everywhere is every screen that can be reached, with all that opens on each.
func everywhere(t *testing.T) []place {
	walked.Do(func() { walk = walkEverywhere(t) })
	for i := range walk {
		walk[i].d.T = t
	}
	return walk
}

// walk is that of every test: it takes seconds.
var (
	walked sync.Once
	walk   []place
)

func walkEverywhere(t *testing.T) []place {
	var all []place
	seen := map[string]bool{}
	for _, to := range []string{"", "v b", "v b up up", "v b home", "v r", "v s", "v a", "v t", "v p", "v u", "v c", "h"} {
		d := aside(burning(t))
		d.Press(strings.Fields(to)...)
		all = append(all, place{fmt.Sprintf("%s after %q", d.M.Active(), to), to, d})
		all = append(all, everyPlace(d, seen)...)
	}
	unkept := burning(t) // and where the disk takes nothing more
	unkept.Hold = true
	unkept.Press("c")
	unkept.Send(tui.Kept{Err: errors.New("no space"), Waiting: 1})
	unkept.Press("ctrl+c", "y")
	all = append(all, place{"not kept", "ctrl+c y", aside(unkept)})
	for row, d := 0, aside(desk.Sit(t)); row < 24; row++ { // and the rows of the form
		d.Press([]string{"r", "down"}[min(row, 1)])
		all = append(all, place{fmt.Sprintf("row %d of the form", row+1), fmt.Sprint("r", strings.Repeat(" down", row)), aside(d)})
	}
	for i := range all {
		all[i].d.Queue = nil // the keys that led there
	}
	return all
}
