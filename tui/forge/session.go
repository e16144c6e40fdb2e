package forge

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/forge"
	modelwords "chargehand/model/words"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// field is a field of the line that a session is keyed in.
type field int

const (
	didField field = iota
	heatsField
	hoursField
	fuelField
	fuelKgField
	afterField
	nowField
	fluxField
	costField
	withField
	fields
)

// typed says of each field how it is called, and its unit where it takes a number.
var typed = [fields]struct {
	label string
	screen.Limits
	number bool
}{
	didField:    {label: words.SessionDid},
	heatsField:  {words.SessionHeats, screen.Limits{Least: 0, Most: 500}, true},
	hoursField:  {words.SessionHours, screen.Limits{Unit: "h", Least: 0, Most: 1000}, true},
	fuelField:   {label: words.SessionFuel},
	fuelKgField: {words.SessionKg, screen.Limits{Unit: "kg", Least: 0, Most: 1000}, true},
	fluxField:   {words.SessionFlux, screen.Limits{Unit: "kg", Least: 0, Most: 100}, true},
	afterField:  {words.SessionAfter, screen.Limits{Unit: "kg", Least: 0.001, Most: 1000}, true},
	nowField:    {label: words.SessionNow},
	costField:   {label: words.SessionCost},
	withField:   {label: words.SessionWith},
}

// session is the line that a session is keyed in, afterwards. Only the piece must be
// there. It is a dialog of several fields; enter on the last keeps it.
type session struct {
	s     Screen
	uid   entry.UID // of the piece
	next  entry.UID // of what it is made into
	name  string
	piece entry.Piece
	at    field // fields is the line that keeps
	did   [8]bool
	in    [fields]screen.Input
	fuel  int
	fuels []fuel
	now   int
	nows  []entry.PieceKind // "" for the same piece
	with  []withIt
	bad   string
}

// withIt is another piece that may have been worked in the same session.
type withIt struct {
	uid  entry.UID
	name string
	in   bool
}

// mostWith is how many are offered, each by its digit.
const mostWith = 9

// withSep parts their names, which have commas.
const withSep = "; "

// fuel is what may have burnt: a word, or a lot of the house.
type fuel struct{ what, says string }

// forgeds are what may have been done.
var forgeds = entry.Choices[entry.Forged]()

// usualFuels are those that need no lot.
var usualFuels = []fuel{{"charcoal", "charcoal"}, {"coal", "coal"}, {"gas", "gas"}}

func (s Screen) newSession(sh *screen.Shared, b forge.Bench, i int) session {
	p := b.Pieces[i]
	f := session{s: s, uid: p.UID, next: sh.NewUID(), name: called(b, i), piece: p.Piece, fuels: []fuel{{"", words.NotSaid}}, nows: []entry.PieceKind{""}}
	for _, l := range sh.House().Lots {
		if l.Of() == entry.LotCharcoal && l.Left.Known() && l.Left.Kg > 0.05 {
			f.fuels = append(f.fuels, fuel{string(l.ID), l.Name})
		}
	}
	f.fuels = append(f.fuels, usualFuels...)
	for _, k := range []entry.PieceKind{entry.Billet, entry.Bar, entry.Finished} {
		if k != p.Form {
			f.nows = append(f.nows, k)
		}
	}
	for _, r := range pieceRows(b) {
		if o := b.Pieces[r.At]; r.At != i && !o.Spent && o.EndsAs == "" && o.Form != entry.CropEnd && len(f.with) < mostWith {
			f.with = append(f.with, withIt{uid: o.UID, name: called(b, r.At)})
		}
	}
	for id := range typed {
		f.in[id] = screen.NewInput(typed[id].number)
	}
	if p.Heats > len(p.OldHeats) { // keyed one by one since the last session
		f.in[heatsField] = screen.PrefilledWith(sh.Units, entry.Some(float64(p.Heats-len(p.OldHeats))), "")
	}
	return f
}

// SessionKeys are the keys of that line. Letters and digits are typed or choose.
var SessionKeys = struct{ Next, Previous, Last, Left, Right, Done, Back key.Binding }{
	Next:     screen.Bind(words.DoNextField, "down", "tab"),
	Previous: screen.Bind(words.DoPrevField, "up", "shift+tab"),
	Last:     screen.Bind(words.DoToKeep, "pgdown"),
	Left:     screen.Bind(words.DoOtherWay, "left"),
	Right:    screen.Bind(words.DoOtherWay, "right"),
	Done:     screen.FieldKeys.Done,
	Back:     screen.FieldKeys.Back,
}

// Typing is true: the fields take text.
func (f session) Typing() bool { return true }

// Stays as long as a hand may be away.
func (f session) Stays() time.Duration { return 10 * screen.Readable }

// Update takes a key.
func (f session) Update(sh *screen.Shared, p screen.Pressed) (screen.Dialog, screen.Effect) {
	to, e := f.updated(sh, p)
	if next, line := to.(session); line && next.at != f.at && f.at < fields {
		next.in[f.at] = next.in[f.at].Left()
		to = next
	}
	return to, e
}

// updated is the line after a key.
func (f session) updated(sh *screen.Shared, p screen.Pressed) (screen.Dialog, screen.Effect) {
	t := screen.TypedOf(p.Key)
	f.bad = ""
	switch k := SessionKeys; {
	case key.Matches(t, k.Back):
		return nil, screen.Said(words.NothingDone)
	case key.Matches(t, k.Done) && f.at == fields:
		return f.done(sh)
	case key.Matches(t, k.Next, k.Done):
		f.at = min(f.at+1, fields)
		return f, nil
	case key.Matches(t, k.Previous):
		f.at = max(f.at-1, 0)
		return f, nil
	case key.Matches(t, k.Last):
		f.at = fields
		return f, nil
	case f.at == fields:
		return f.refused(words.SessionEnds)
	case f.at == didField:
		return f.toggled(t)
	case f.at == withField:
		return f.joined(t)
	case f.at == fuelField || f.at == nowField:
		at, all := &f.fuel, f.fuelNames()
		if f.at == nowField {
			at, all = &f.now, f.nowNames()
		}
		n, ok := other(t, *at, len(all))
		if !ok {
			return f.refused(words.SessionOneOf(all))
		}
		*at = n
		return f, nil
	}
	in, ok := f.in[f.at].Typed(p.Key)
	if !ok {
		return f.refused(words.NotInField(typed[f.at].number))
	}
	f.in[f.at] = in
	return f, nil
}

// joined takes another piece into the session, or out of it, by its digit.
func (f session) joined(t screen.Typed) (screen.Dialog, screen.Effect) {
	n, err := strconv.Atoi(screen.Digit(t))
	if err != nil || n < 1 || n > len(f.with) {
		return f.refused(f.withHint())
	}
	f.with = slices.Clone(f.with)
	f.with[n-1].in = !f.with[n-1].in
	return f, nil
}

// withHint names the pieces that may be in it too.
func (f session) withHint() string {
	var names []string
	for _, w := range f.with {
		names = append(names, w.name)
	}
	return words.SessionWithKeys(names)
}

func (f session) refused(why string) (screen.Dialog, screen.Effect) {
	f.bad = why
	return f, screen.Refuse(why)
}

// fuelNames are the fuels that may have burnt, in their order.
func (f session) fuelNames() (all []string) {
	for _, one := range f.fuels {
		all = append(all, one.says)
	}
	return all
}

// nowNames are what the piece may be now, in their order.
func (f session) nowNames() (all []string) {
	for _, k := range f.nows {
		if k == "" {
			all = append(all, words.SessionSame)
			continue
		}
		all = append(all, modelwords.PieceKindShort(k))
	}
	return all
}

// other is another one of n, by an arrow or its number; not ok is another key.
func other(t screen.Typed, at, n int) (to int, ok bool) {
	switch k := SessionKeys; {
	case key.Matches(t, k.Left):
		return (at + n - 1) % n, true
	case key.Matches(t, k.Right):
		return (at + 1) % n, true
	}
	if d, err := strconv.Atoi(screen.Digit(t)); err == nil && d >= 1 && d <= n {
		return d - 1, true
	}
	return at, false
}

// toggled says or takes back one thing that was done, by its number or its first letter;
// of two with the same the second comes with the letter after it.
func (f session) toggled(t screen.Typed) (screen.Dialog, screen.Effect) {
	for i, d := range forgeds {
		if screen.Digit(t) == strconv.Itoa(i+1) || string(t) == didLetter(d) {
			f.did[i] = !f.did[i]
			return f, nil
		}
	}
	return f.refused(words.SessionDidKeys(didKeys()))
}

// didLetters are the letters of what was done, where it is not the first one.
var didLetters = map[entry.Forged]string{entry.FinishedOff: "i"}

func didLetter(d entry.Forged) string {
	if l, ok := didLetters[d]; ok {
		return l
	}
	return string(d)[:1]
}

func didKeys() (keys []string) {
	for i, d := range forgeds {
		keys = append(keys, strconv.Itoa(i+1)+" "+string(d))
	}
	return keys
}

// doneSo is what was said to be done.
func (f session) doneSo() (all []entry.Forged) {
	for i, d := range forgeds {
		if f.did[i] {
			all = append(all, d)
		}
	}
	return all
}

// done keeps the session, and the piece that was made.
func (f session) done(sh *screen.Shared) (screen.Dialog, screen.Effect) {
	var v [fields]entry.Maybe[float64]
	for id, of := range typed {
		if !of.number || f.in[id].Trimmed() == "" {
			continue
		}
		n, err := f.in[id].Value(sh.Units, of.Limits)
		if err != nil {
			f.at = field(id)
			return f.refused(err.Error())
		}
		v[id] = entry.Some(n)
	}
	ev := entry.ForgeSession{
		Pieces: []entry.UID{f.uid}, Did: f.doneSo(), Heats: entry.Maybe[entry.Count]{Value: entry.Count(v[heatsField].Value), Known: v[heatsField].Known},
		Hours: entry.Maybe[entry.Hour]{Value: entry.Hour(v[hoursField].Value), Known: v[hoursField].Known}, Flux: mass(v[fluxField]),
		Fuel: entry.ForgeFuel{What: f.fuels[f.fuel].what, Kg: mass(v[fuelKgField])},
	}
	for _, w := range f.with {
		if w.in {
			ev.Pieces = append(ev.Pieces, w.uid)
		}
	}
	if len(ev.Pieces) > 1 && f.nows[f.now] != "" {
		f.at = nowField
		return f.refused(words.SessionOfSeveral)
	}
	cost, err := costOf(f.in[costField].Trimmed())
	if err != nil {
		f.at = costField
		return f.refused(err.Error())
	}
	ev.Cost = cost
	mark, evs := f.uid, []entry.Event{}
	if made := f.nows[f.now]; made == "" {
		if v[afterField].Known {
			ev.After = []entry.PieceMass{{Piece: f.uid, Mass: entry.Kilogram(v[afterField].Value)}}
		}
		evs = append(evs, ev)
	} else {
		mark = f.next
		evs = append(evs, ev, entry.Piece{UID: f.next, Form: made, Name: numbered(bench(sh), made), From: []entry.PieceFrom{{Piece: f.uid}}, Mass: mass(v[afterField])})
	}
	return nil, f.s.keep(sh, mark, evs...)
}

// costOf reads an amount with its currency behind it.
func costOf(text string) (*entry.Cost, error) {
	if text == "" {
		return nil, nil
	}
	number, currency, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(strings.ReplaceAll(number, ",", "."), 64)
	if err != nil || v < 0 || v > 1e9 {
		return nil, errors.New(words.CostUnread(text))
	}
	return &entry.Cost{Amount: entry.Money(v), Currency: strings.TrimSpace(currency)}, nil
}
