//go:build unix

package main

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui"
)

// sends is what a terminal sends for keys that are no characters.
var sends = map[string]string{
	"up": "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D", "home": "\x1b[H", "end": "\x1b[F", "pgup": "\x1b[5~", "pgdown": "\x1b[6~",
	"delete": "\x1b[3~", "backspace": "\x7f", "enter": "\r", "esc": "\x1b", "tab": "\t", "f2": "\x1bOQ", "ctrl+c": "\x03", "space": " ",
}

// settling is how long a frame may take to be written in full: its upper lines come
// before the lower ones, which still show the frame before.
const settling = 150 * time.Millisecond

// tick stands for a second without a key, after which keys are written down.
const tick = ""

// everyKey is a script of keys through every screen, list and field, and what each
// of its lines leads to. A key that is held back has a ! before it, a paste stands
// in brackets.
var everyKey = []struct{ keys, leads string }{
	{"down up h", "keys: start"}, {"pgdown esc", "counts for nothing"},
	{"e", "in which furnace"}, {"esc", "nothing done"}, {"a", "bag test"}, {"esc", "nothing done"}, {"esc", "counts for nothing"},
	// The form: typed, corrected, abandoned; then lit.
	{"r", "your initials"}, {"up M K x backspace up 7 left 3 delete home end esc", "counts for nothing"},
	{"r", "your initials"}, {"pgdown enter", "are guesses"}, {"y", "the fire is lit"},
	// Acts, in large letters too, refused, and a glove that leans.
	{"f", "fill: 1 bucket"}, {"C", "charge 1"}, {"s d", "half a scoop of ore, to charge 1"}, {"z", "nothing on z"}, {"t !t", "leaning glove"},
	{"up down", "next charge: 1 bucket of charcoal, 2"}, {"g", "not to the mark"}, {"u", "crossed out"}, {"tab", "the shaft shows chemistry"}, {"f2", "no other fire"}, {"p", "poked"},
	// Fields: typed and corrected, abandoned, pasted into.
	{"b", "? blast"}, {"7 2 left 9 delete 0 enter", "790 l/min"}, {"b o", "blast"}, {"b", "? blast"}, {"5 esc", "nothing done"},
	{"n", "? note"}, {"w e t space W i n d x backspace enter", "wet Wind"}, {"n", "? note"}, {"[two words] enter", "two words"},
	{"![scsc]", "pasted text"}, {"e", "? temperature"}, {"x", "type digits"}, {"9 0 0 enter p", "900"},
	{"l", "look at what"}, {"z", "none on z"}, {"p d", "peep"}, {"w m 1", "weight of bucket"}, {"2 . 2 5 enter w", "weighed: bucket"},
	// The list of rare acts, with what each kind of line opens.
	{"o", "other acts"}, {"e", "when was it"}, {"0 enter", "what was at"}, {"r", "entered late"}, {"o e", "when was it"}, {"p", "rows as on paper"}, {"1 z enter", "row 2"}, {"up backspace esc", "drop 1 row"}, {"y", "nothing done"}, {"o d", "you decide"}, {"esc", "nothing done"},
	{"o w a", "caution 1 of"}, {"z", "caution 2 of"}, {"esc", "h help"}, {"o w r", "what is ready"}, {"1", "[x] arch tools"}, {"esc", "nothing done"},
	{"o k", "sure"}, {"n", "nothing done"}, {"o b", "burn-down begins"}, {"u", "crossed out"},
	// Wall and weather, and what a hand-over covers.
	{"o a w k a", "wall: crack, at the tuyere"}, {"o a r n", "rain: none"}, {"o a i z", "wind"}, {"e a s t enter", "wind: east"}, {"o a e", "in the shade"}, {"8 0 enter", "read it in the shade"}, {"n esc", "nothing done"}, {"o g Q", "initials"}, {"enter", "what does it cover"}, {"w", "watching only"},
	// Far view.
	{"space", "kept"}, {"s", "scoop of ore, to charge 1"}, {"space", "blast"},
	// The other screens, and lists in them.
	{"h", "keys: fire"}, {tick, "keys: fire"}, {"pgdown down esc", "c charge "},
	{"v", "other screens"}, {"esc", "nothing done"},
	{"v b", "book: what was done"}, {"up up k", "show one kind only"}, {"n", "book: notes"}, {"k a", "book: what was done"}, {"enter", "change "}, {"t", "when it was"}, {"esc", "nothing done"},
	{"r", "this is the past"}, {"right w left k e p b enter esc", "book: what was done"}, {"esc", "c charge "},
	{"v r", "this is the past"}, {"end home right up tab esc", "c charge "},
	{"v s", "2 smelts"}, {"o o o", "2 smelts"}, {"i", "find"}, {"r e e d backspace", "found"}, {"enter esc", "2 smelts"}, {"m", "mark two"}, {"k", "1 marked"}, {"down k", "2 marked"}, {"m", "too few to tell"}, {"down up x", "nothing on x"}, {tick, "too few to tell"}, {"esc", "2 smelts"}, {"down enter", "this is the past"}, {"v w", "model's opinion"}, {"n down up", "by the ore not come down"}, {"v f", "a moment to look at"}, {"c", "look at only"}, {"v o", "c charge "},
	{"v e", "settings"}, {"m", "from now on"}, {"y", "mass in lb"}, {"esc", "nothing done"}, {"v l", "c charge "},
	// The stores: a lot begun, counted, crossed out, put right; an act of the fire from there.
	{"v t", "Nothing here yet"}, {"n 1 d r e e d enter 2 0 enter 3 0 enter", "dug: 20 lb reed"}, {"w 1 9 enter", "counted again: 19 lb reed"}, {"x", "crossed out"},
	{"n esc", "nothing done"}, {"m p 2 5 enter", "25 % water"}, {"a g 1 4 enter", "% assumed, "}, {"a i 8 9 enter i r", "really"}, {"n esc", "nothing done"}, {"r", "rodded"}, {"up down esc", "c charge "},
	// The account: something weighed, one line for next time.
	{"v c", "iron in"}, {"down up w k 1 enter", "weighed: charcoal left"}, {"w g 6 enter e . 5 enter k", "6 lb ± 0.5 lb"}, {"p 1 enter", "1-S"}, {"p esc", "nothing done"}, {"n t a p enter", "for next time: tap"}, {"n esc", "nothing done"}, {"esc", "c charge "},
	// A furnace, and a plan for it.
	{"v u", "No furnace here yet"}, {"n O l d enter 1 0 enter 9 enter 2 0 enter 2 4 enter 6 enter 2 enter 2 2 enter 2 0 enter", "furnace Old"}, {"w b 0 enter", "type a height"}, {"backspace 0 space 1 0 enter", "heights: 0 10"}, {"r c l a y space 1 enter", "wall: clay 1"}, {"y 9 enter 6 enter", "arch: 9 cm wide"}, {"esc", "furnace Old, measured"}, {"i 1 enter d r y enter n o enter", "small fires only"}, {"up down esc", "c charge "},
	{"v p", "wanted: a bloom"}, {"w b 3 enter", "a bloom of 3 lb"}, {"right left enter", "plan taken"}, {"p t r y enter", "try"}, {"e", "of slag"}, {"esc", "wanted: a bloom"}, {"o p 5 enter", "the fill: 5 charges"}, {"g 2 enter", "the ore: 2 lb"}, {tick, "the fill: 5 charges"}, {"enter", "the ore rises so"}, {"m", "by when"}, {"i 6 enter", "by "}, {"esc", "wanted: a bloom"}, {"g 1", "somebody is named"}, {"esc", "nothing done"}, {"k 1", "ambulance"}, {"L a n e enter", "ambulance finds it: Lane"}, {"esc", "nothing done"}, {"x", "crossed out"}, {"esc", "c charge "},
	// The forge: a gift keyed, into the fire and out, cut, a session begun and abandoned, one kept, a test with its place.
	{"v g", "No piece of iron yet"}, {"n b o l d enter g i f t enter 1 9 9 8 enter 6 enter", "old 6 lb, gift"}, {"i", "in the fire"}, {"up i", "out of the fire"}, {"k 4 enter 2 enter . 1 enter", "old, one 4 lb"},
	{"up down enter 1 enter 3 up esc", "nothing done"}, {"enter 2 pgdown enter", "fold"}, {"e esc", "nothing done"}, {"e p l 4 enter", "long plain rays"}, {"o w 3 enter 2 . 5 enter", "weighed: 3 lb"}, {"w esc", "nothing done"}, {"x", "crossed out"}, {"m esc", "nothing done"}, {"up down esc", "c charge "},
	{"v a", "g go on with"}, {"esc", "c charge "},
	// A log from a file that is not there.
	{"v i", "Nothing is kept before"}, {"x", "opens a file first"}, {"p n o n e enter", "none"}, {"esc", "c charge "},
}

// Every key that was sent stands in the book once, in the order in which it was
// pressed, as it was typed, and marked where it was held back: in the stream of the
// smelt or in that of the house, each in its own order.
func TestEveryKeyIsInTheBook(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	s := openTerminal(t, dir, 120, 36)
	s.Shows("look at one", "practise")
	var want []string
	step := func(keys, leads string) {
		t.Helper()
		var send strings.Builder
		for _, k := range strings.Fields(keys) {
			want = append(want, k)
			send.WriteString(bytesOf(strings.TrimPrefix(k, "!")))
		}
		s.Does(send.String(), leads)
		s.Drained()
		time.Sleep(settling)
	}
	for _, line := range everyKey {
		if line.keys == tick {
			time.Sleep(1200 * time.Millisecond)
		}
		keys := strings.ReplaceAll(line.keys, "[two words]", "[two_words]") // one field
		step(keys, line.leads)
	}
	// Behind the lock every key is held back, those of the word that unlocks too.
	step("o z", "keys are locked")
	step("!c !S !1 !tab", "keys are locked")
	var word []string
	s.Until("how to unlock", func(screen string) bool {
		word = regexp.MustCompile(`type (\w) (\w) (\w) to unlock`).FindStringSubmatch(screen)
		return word != nil
	})
	step("!"+strings.Join(word[1:], " !"), "keys act again")
	step("ctrl+c", "goes on at the next start")
	step("n", "nothing done")
	// Closed, with its line for next time; then nothing burns that would be asked about.
	step("o k y", "one line for next time")
	step("t a p enter", "for next time: tap")
	want = append(want, "ctrl+c")
	s.Press("\x03")
	if code := s.Exit(); code != exitWell {
		t.Errorf("exit code %d", code)
	}

	smelt, atSmelt := pressedIn(t, dir, onlySmelt(t, dir))
	house, atHouse := pressedIn(t, dir, entry.House)
	for i := range want {
		if want[i] == "space" {
			want[i] = " "
		}
		want[i] = strings.ReplaceAll(want[i], "_", " ")
	}
	if n := interleaved(want, smelt, house); n < len(want) || len(smelt)+len(house) != len(want) {
		t.Errorf("of %d keys the book has %d and %d; as they were sent up to %d\n     sent: %q\nthe smelt: %q\nthe house: %q",
			len(want), len(smelt), len(house), n, want[max(0, n-8):min(n+4, len(want))], smelt, house)
	}
	for _, id := range tui.New(tui.Config{}).Screens() {
		if !atSmelt[string(id)] && !atHouse[string(id)] {
			t.Errorf("no key was pressed at %s: the script lacks it", id)
		}
	}
}

func bytesOf(key string) string {
	if b, ok := sends[key]; ok {
		return b
	}
	if strings.HasPrefix(key, "[") && len(key) > 1 {
		return "\x1b[200~" + strings.ReplaceAll(strings.Trim(key, "[]"), "_", " ") + "\x1b[201~"
	}
	return key
}

// pressedIn are the keys of a stream, in the order of its entries, and the screens
// that they were pressed at.
func pressedIn(t *testing.T, dir, stream string) (keys []string, screens map[string]bool) {
	t.Helper()
	screens = map[string]bool{}
	for _, e := range readSmelt(t, bookIn(dir), stream) {
		if ks, ok := e.Event.(entry.Keys); ok {
			screens[e.Screen] = true
			for _, p := range ks.Pressed {
				held := ""
				if p.Held {
					held = "!"
				}
				keys = append(keys, held+p.Key)
			}
		} else if e.Key != "" {
			screens[e.Screen] = true
			keys = append(keys, e.Key)
		}
	}
	return keys, screens
}

// interleaved is how much of what was sent is made of two streams, each in its own
// order and with nothing left out.
func interleaved(sent, a, b []string) int {
	reach := map[int]bool{0: true} // how many of a may have been used
	for n, k := range sent {
		next := map[int]bool{}
		for i := range reach {
			if i < len(a) && a[i] == k {
				next[i+1] = true
			}
			if j := n - i; j < len(b) && b[j] == k {
				next[i] = true
			}
		}
		if len(next) == 0 {
			return n
		}
		reach = next
	}
	return len(sent)
}
