package tui

import (
	"cmp"
	"slices"
	"time"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
	"chargehand/tui/paint"
)

// journal is the Book: every entry of a smelt in the order in which things
// happened, the newest at the bottom. The cursor stays on its entry while
// others come in; 0 is the newest, whichever that is.
type journal struct {
	seq    uint64
	filter int
}

// journalKeys are the keys of the Book.
type journalKeys struct {
	moveKeys
	Strike, Amend, Undo, Late, Filter, Replay key.Binding
}

var journalMap = journalKeys{
	moveKeys: move,
	Strike:   bind(words.DoStrike, "u"),
	Amend:    bind(words.DoAmend, "a", "enter"),
	Undo:     bind(words.DoRestore, "o"),
	Late:     bind(words.DoLate, "e"),
	Filter:   bind(words.DoFilter, "k"),
	Replay:   bind(words.DoReplayHere, "r"),
}

func (k journalKeys) all() []key.Binding {
	return append([]key.Binding{k.Amend, k.Strike, k.Undo, k.Late, k.Filter, k.Replay}, k.moveKeys.all()...)
}

func (journal) name() screenID { return bookScreen }
func (journal) keys() keymap   { return journalMap }

// entered begins at the newest entry.
func (j journal) entered(shared) screen { return journal{filter: j.filter} }

func (j journal) hints(shared) []paint.KeyHint {
	return append(hints(journalMap.all()[:6]...), hint(global.Views), hint(global.Back))
}

func (j journal) update(sh shared, p Pressed) (screen, step) {
	t, k := typedOf(p.Key), journalMap
	lines := j.lines(sh)
	at := j.index(lines)
	if to, ok := k.moved(t, at, len(lines), max(1, tableRows(sh.h)-1)); ok {
		j.seq = 0
		if to < len(lines)-1 {
			j.seq = lines[to].Seq()
		}
		return j, step{}
	}
	switch {
	case key.Matches(t, k.Filter):
		return j, j.askFilter()
	case key.Matches(t, k.Late):
		return j, enterLate(sh)
	case !key.Matches(t, k.Strike, k.Amend, k.Undo, k.Replay):
		return j, refused(words.NoAct(keyLabel(string(t))))
	case at < 0:
		return j, refused(words.NoEntryHere)
	case key.Matches(t, k.Replay):
		return j, toReplay(lines[at])
	case rightsIn(sh.smelt) < mendable:
		return j, refused(whyNot(sh.smelt))
	case key.Matches(t, k.Undo):
		return j, undo(sh, lines[at])
	case !entry.IsAct(lines[at].Event) && lines[at].Entry.Kind() != entry.KindLight:
		return j, refused(words.NotAnAct)
	case key.Matches(t, k.Strike):
		return j, crossOut(sh, lines[at])
	}
	return j, askAmend(sh, lines[at])
}

// index is where the cursor stands among the lines, -1 when there are none.
func (j journal) index(lines []fold.Line) int {
	if j.seq != 0 {
		if i := slices.IndexFunc(lines, func(l fold.Line) bool { return l.Seq() == j.seq }); i >= 0 {
			return i
		}
	}
	return len(lines) - 1
}

// lines are the entries that the filter shows, as they happened.
func (j journal) lines(sh shared) []fold.Line {
	var ls []fold.Line
	for l := range sh.smelt.Lines() {
		if filters[j.filter].shows(l) {
			ls = append(ls, l)
		}
	}
	slices.SortStableFunc(ls, func(a, b fold.Line) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Seq(), b.Seq()))
	})
	return ls
}

// filters are the kinds that the Book can be narrowed to; the first is how it
// opens.
var filters = []struct {
	key, word string
	shows     func(fold.Line) bool
}{
	{"a", words.FilterActs, func(l fold.Line) bool {
		return entry.IsAct(l.Event) || ofKind(l, entry.KindLight, entry.KindClockJump) || unknown(l)
	}},
	{"c", words.FilterCharges, func(l fold.Line) bool {
		return ofKind(l, entry.KindCharge, entry.KindFill, entry.KindLevel, entry.KindDip, entry.KindPoke)
	}},
	{"b", words.FilterBlast, func(l fold.Line) bool {
		return ofKind(l, entry.KindBlast, entry.KindRod, entry.KindTuyere)
	}},
	{"l", words.FilterLooks, func(l fold.Line) bool {
		return ofKind(l, entry.KindLook, entry.KindTemperature, entry.KindTap, entry.KindSample)
	}},
	{"w", words.FilterWeighings, func(l fold.Line) bool { return ofKind(l, entry.KindWeigh) }},
	{"n", words.FilterNotes, func(l fold.Line) bool { return ofKind(l, entry.KindNote) }},
	{"m", words.FilterMended, func(l fold.Line) bool { return l.StruckBy != 0 || l.AmendedBy != 0 }},
	{"e", words.FilterAll, func(fold.Line) bool { return true }},
}

func ofKind(l fold.Line, ks ...entry.Kind) bool {
	return l.Event != nil && slices.Contains(ks, l.Event.Kind())
}

func unknown(l fold.Line) bool {
	_, is := l.Event.(entry.Unknown)
	return is
}

// askFilter asks what to show. The Book takes the answer through filterSet.
func (j journal) askFilter() step {
	var list []option
	for i, f := range filters {
		list = append(list, opt(f.key, f.word, func(shared) step { return step{set: journal{filter: i}} }))
	}
	return choose(words.DoFilter, list...)
}

// askAmend asks what to change about an entry, then the change.
func askAmend(sh shared, l fold.Line) step {
	at := opt("t", words.AmendTime, func(sh shared) step {
		given := sh.smelt.Wall(l).Format(words.Clock)
		return askWhen(sh, words.AmendTime, given, func(at time.Time) step { return amend(sh, l, nil, at, wholeMinutes) })
	})
	ask, ok := amendAsks[l.Event.Kind()]
	if l.Entry.Kind() == entry.KindLight {
		return refused(words.LightStays)
	}
	if !ok {
		return choose(words.AmendWhat(describe(sh.theme.Units, sh.smelt, l)), at)
	}
	return choose(words.AmendWhat(describe(sh.theme.Units, sh.smelt, l)), at, opt("w", words.AmendEvent, func(sh shared) step {
		return ask(sh, l.Event, func(ev entry.Event) step { return amend(sh, l, ev, time.Time{}, 0) })
	}))
}

// amendAsks are the askers of the kinds whose content can be changed.
var amendAsks = map[entry.Kind]asker{
	entry.KindCharge: askCharge, entry.KindFill: askFill, entry.KindRecipe: askRecipe,
	entry.KindBlast: askBlast, entry.KindDip: askDip, entry.KindTap: askTap, entry.KindLook: askLook,
	entry.KindTemperature: askTemperature, entry.KindWeigh: askWeigh, entry.KindNote: askNote,
	entry.KindArch: askArch, entry.KindTuyere: askTuyere, entry.KindSample: askSample,
	entry.KindHandOver: askHandOver, entry.KindExtract: askExtract,
}
