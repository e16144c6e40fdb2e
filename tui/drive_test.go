package tui

import (
	"bytes"
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/model/rehearse"
	"chargehand/model/shelf"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// kept is a book in memory of one rehearsal. It acknowledges when it is asked to.
type kept struct {
	t       testing.TB
	entries []entry.Entry
	queue   []entry.Entry
	house   uint64
}

func (b *kept) Keep(es ...entry.Entry) {
	for _, e := range es {
		if e.Stream == entry.House {
			b.house++
			e.Seq = b.house
			b.queue = append(b.queue, e)
			continue
		}
		e.Seq = uint64(len(b.entries) + 1)
		e, lost := e.Resolve(func(local string) (uint64, bool) {
			for _, k := range b.entries {
				if k.Local == local {
					return k.Seq, true
				}
			}
			return 0, false
		})
		if lost != "" {
			b.t.Fatal("an entry speaks of one that is not kept: " + lost)
		}
		b.entries, b.queue = append(b.entries, e), append(b.queue, e)
	}
}

func (b *kept) Smelts() ([]shelf.Summary, error) { return nil, nil }

func (b *kept) Entries(string) ([]entry.Entry, []entry.Gap, error) { return b.entries, nil, nil }

// rehearsing is a rehearsal under way without a terminal.
func rehearsing(t testing.TB, entries []entry.Entry, w, h int) (*driven, *kept) {
	t.Helper()
	book := &kept{t: t, entries: entries}
	last := rehearse.SecondsOf(entries[len(entries)-1])
	m := New(Config{
		Store: book, Start: rehearse.Moment(last), Rehearsal: entries[0].Stream,
		NewUID: func() string { return "0000000000000001" },
	})
	m.theme = theme.Theme{}
	p := newRehearsal(m, book, &drive{at: last, pace: usualPace, seen: map[raised]bool{}})
	p.Update(tea.WindowSizeMsg{Width: w, Height: h})
	p.Update(shelfRead{})
	p.Update(smeltRead{id: entries[0].Stream, on: "fire", entries: entries})
	if p.live == nil {
		t.Fatal("no furnace answers")
	}
	return p, book
}

// practised is how a newcomer's rehearsal begins.
func practised(t testing.TB, number int64, mishaps ...rehearse.Mishap) []entry.Entry {
	t.Helper()
	entries, err := rehearse.Begin(rehearse.Beginning{Number: number, Mishaps: mishaps, Chosen: true, Stream: "rehearsal-1", UnderWay: true})
	if err != nil {
		t.Fatal(err)
	}
	return entries
}

// hand presses a key now.
func (p *driven) hand(k string) {
	msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
	switch k {
	case "esc":
		msg = tea.KeyMsg{Type: tea.KeyEsc}
	case "up":
		msg = tea.KeyMsg{Type: tea.KeyUp}
	}
	p.Update(Pressed{Key: msg, At: p.next()})
}

// script is what is pressed at which second of the rehearsal: charges, looks, a scoop more, a list left, a rod, a tap.
func script(from int) map[int][]string {
	keys := map[int][]string{}
	for i := range 14 {
		at := from + 400 + 620*i
		keys[at] = []string{"c"}
		keys[at+31] = []string{"l", "p"}
		keys[at+90] = []string{"i"}
		switch i % 4 {
		case 0:
			keys[at+200] = []string{"up"}
			keys[at+201] = []string{"s", "s", "s"}
		case 1:
			keys[at+210] = []string{"r"}
			keys[at+215] = []string{"l", "o"}
		case 2:
			keys[at+220] = []string{"t"}
			keys[at+300] = []string{"o", "esc", "u"}
		}
	}
	return keys
}

// lines are the entries as they are kept.
func lines(t testing.TB, es []entry.Entry) []byte {
	t.Helper()
	var b bytes.Buffer
	for _, e := range es {
		line, err := entry.Encode(e)
		if err != nil {
			t.Fatal(err)
		}
		b.Write(line)
		b.WriteByte('\n')
	}
	return b.Bytes()
}

// The same number and keys give the same smelt, bit for bit, whatever the pace: whether the seconds come one by one or by
// hundreds, and whether the book is quick or slow to say that it has kept something.
func TestARehearsalIsTheSameAtAnyPace(t *testing.T) {
	begun := practised(t, 9, rehearse.Mishaps()[2])
	from := int(rehearse.SecondsOf(begun[len(begun)-1]))
	keys := script(from)
	const hours = 9000
	run := func(beat, acks int) []byte {
		p, book := rehearsing(t, append([]entry.Entry(nil), begun...), 120, 36)
		for done := 0; done < hours; {
			n := 0
			for ; n < beat && done < hours; n++ {
				if ks := keys[int(p.at)]; len(ks) > 0 {
					for _, k := range ks {
						p.hand(k)
					}
				}
				p.second()
				done++
				if done%acks == 0 && len(book.queue) > 0 {
					es := book.queue
					book.queue = nil
					p.Update(Kept{Entries: es})
				}
			}
			_ = p.View()
		}
		return lines(t, book.entries)
	}
	one := run(1, 1)
	for _, other := range []struct{ beat, acks int }{{30, 1}, {30, 45}, {600, 7}} {
		if is := run(other.beat, other.acks); !bytes.Equal(is, one) {
			a, b := bytes.Split(one, []byte{'\n'}), bytes.Split(is, []byte{'\n'})
			for i := range min(len(a), len(b)) {
				if !bytes.Equal(a[i], b[i]) {
					t.Fatalf("at %d seconds a frame line %d is\n%s\nand one by one\n%s", other.beat, i+1, b[i], a[i])
				}
			}
			t.Fatalf("%d lines at %d seconds a frame, %d one by one", len(b), other.beat, len(a))
		}
	}
	if n := bytes.Count(one, []byte{'\n'}); n < len(begun)+40 {
		t.Fatalf("only %d entries came of it", n-len(begun))
	}
}

// Beside the fire a rehearsal runs at its pace; in a list, in a field and on other screens as a hand does, so that nothing closes
// itself; what happens slows it down, and the next act lets it go on.
func TestARehearsalSlowsDownByItself(t *testing.T) {
	p, _ := rehearsing(t, practised(t, 9), 120, 36)
	if p.speed() != 60 {
		t.Fatalf("it begins at %v", p.speed())
	}
	p.hand("l")
	if p.speed() != 1 {
		t.Errorf("with a list open it runs at %v", p.speed())
	}
	p.hand("esc")
	for i := 0; !p.slowed; i++ {
		if p.second(); i > 7200 {
			t.Fatal("two hours, and no charge is due")
		}
	}
	if p.speed() != 1 || !p.live.Room() {
		t.Fatalf("slowed without room for a bucket, at %v", p.speed())
	}
	p.hand("i")
	if p.speed() != 1 {
		t.Error("a look lets it run on while a charge is due")
	}
	p.hand("c")
	if p.speed() != 60 {
		t.Errorf("after the charge it runs at %v", p.speed())
	}
}

// A bucket that would stand over the rim does not go in: it is refused, and nothing is booked.
func TestARehearsalTakesNoBucketOverTheRim(t *testing.T) {
	p, _ := rehearsing(t, practised(t, 9), 80, 24)
	for !p.live.Room() {
		p.second()
	}
	p.hand("c")
	for range 3 { // past what a leaning glove does
		p.second()
	}
	booked := len(p.model.running.Reading().Charges)
	p.hand("c")
	p.second()
	if text, refused := p.model.Answer(); !p.live.Full() || text != words.NoRoom || !refused {
		t.Errorf("a bucket on a full shaft (%t): %q", p.live.Full(), text)
	}
	if n := len(p.model.running.Reading().Charges); n != booked {
		t.Errorf("%d charges of %d stand in the book", n, booked)
	}
}

// That all the ore is in is told at every room for a bucket until somebody keys it, and the first line says how a rehearsal that
// slowed down goes on.
func TestARehearsalTellsThatTheOreIsInUntilItIsKeyed(t *testing.T) {
	p, _ := rehearsing(t, practised(t, 913381), 80, 24)
	told := 0
	for i := 0; told < 2; i++ {
		if i > 36000 {
			t.Fatalf("ten hours, and the ore was told to be in %d times\n%s", told, p.View())
		}
		p.second()
		if !p.live.Room() {
			if p.slowed {
				p.model = p.model.hasRead()
				if p.says(); p.model.paced != "practice, slowed: F4 goes on" {
					t.Fatalf("slowed, and it says %q", p.model.paced)
				}
				p.slowed = false
			}
			continue
		}
		if p.live.Asks() == rehearse.OreIsIn {
			p.model = p.model.hasRead()
			if p.says(); p.model.answer.text != words.RehearsalNext(rehearse.OreIsIn, false) || p.model.paced != "practice, slowed: all ore is in" {
				t.Fatalf("room %d over all the ore: %q, %q", told+1, p.model.paced, p.model.answer.text)
			}
			told++
		}
		p.hand("c")
		p.second()
		p.hand("r") // else slag shuts the tuyere
		p.second()
	}
	p.hand("o")
	p.hand("l")
	for !p.live.Room() {
		p.second()
	}
	if p.model.answer.text != words.RehearsalNext(rehearse.RoomForBucket, true) {
		t.Errorf("once it is keyed: %q", p.model.answer.text)
	}
}

// Nothing of the sealed truth reaches the screen before the end: with another seal in the place of the true one, the same entries
// show the same at every hour.
func TestNothingSealedIsOnTheScreen(t *testing.T) {
	shows := func(seal int64) string {
		begun := practised(t, 9)
		other := practised(t, seal)
		p, book := rehearsing(t, begun, 200, 60)
		for range 3000 {
			for _, k := range script(int(rehearse.SecondsOf(begun[len(begun)-1])))[int(p.at)] {
				p.hand(k)
			}
			p.second()
		}
		es := append([]entry.Entry(nil), book.entries...)
		es[1].Event = other[1].Event.(entry.Sealed)
		m := New(Config{Store: book, Start: rehearse.Moment(p.at), Rehearsal: es[0].Stream, NewUID: func() string { return "1" }})
		m, _, _ = m.Update(tea.WindowSizeMsg{Width: 200, Height: 60})
		m, _, _ = m.Update(shelfRead{})
		m, _, _ = m.Update(smeltRead{id: es[0].Stream, on: "fire", entries: es})
		return m.View()
	}
	if shows(9) != shows(77) {
		t.Error("another seal shows another screen")
	}
}

// BenchmarkRehearsing600 is what a second of the hand costs at 600 times: 600 seconds of furnace, solver and root in 20 frames.
// It holds on one core as long as one takes less than a second; reference is 600 ticks of the root alone.
func BenchmarkRehearsing600(b *testing.B) {
	for _, size := range []struct{ w, h int }{{80, 24}, {120, 36}, {200, 60}} {
		p, book := rehearsing(b, practised(b, 9), size.w, size.h)
		keys := script(int(p.at))
		second := func(frames bool, step func()) {
			for frame := range 20 {
				for range 30 {
					step()
				}
				if len(book.queue) > 0 {
					es := book.queue
					book.queue = nil
					p.Update(Kept{Entries: es})
				}
				if frames {
					p.frame, p.drawn = p.model.drawn(&p.sheet), uint64(frame)
				}
			}
		}
		b.Run(fmt.Sprintf("%dx%d", size.w, size.h), func(b *testing.B) {
			for b.Loop() {
				second(true, func() {
					for _, k := range keys[int(p.at)] {
						p.hand(k)
					}
					p.second()
				})
			}
			b.ReportMetric(float64(p.model.running.Len()), "entries")
			b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)*100, "%core")
		})
		b.Run(fmt.Sprintf("%dx%d/reference", size.w, size.h), func(b *testing.B) {
			at := p.at
			for b.Loop() {
				second(false, func() { at++; p.model, _, _ = p.model.Update(Tick{At: rehearse.Moment(at)}) })
			}
			b.ReportMetric(b.Elapsed().Seconds()/float64(b.N)*100, "%core")
		})
	}
}
