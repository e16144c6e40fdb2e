package tui_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// Entries that are lost are said on every screen that shows the smelt, and stand
// as a row of their own in the Book.
func TestLostEntriesAreSaid(t *testing.T) {
	before := desk.Smelting(t, theme.Theme{})
	id := before.M.Running().ID()
	es := before.Book[id]
	from := es[len(es)/2].Seq
	before.Book[id] = slices.Delete(es, len(es)/2, len(es)/2+8)
	said := fmt.Sprintf("entries %d to %d are lost", from, from+7)
	for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
		d := desk.SitAt(t, before.Book, desk.Later(before.At, time.Minute), theme.Theme{})
		d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		d.Press("g")
		d.Shows(said + ": what is shown lacks them")
		d.Press("v", "r")
		if d.M.Active() != screen.Replay {
			t.Fatalf("at %s", d.M.Active())
		}
		d.Shows(said)
		d.Press("v", "b", "k", "e")
		d.Shows(said)
		d.Press("home")
		for range es {
			if strings.Count(d.Picture(), said) == 2 {
				break
			}
			d.Press("down")
		}
		if n := strings.Count(d.Picture(), said); n != 2 {
			t.Errorf("at %v it is said %d times in the Book:\n%s", size, n, d.Picture())
		}
		if next, _ := d.M.Running().LastEntry(); next.Seq <= es[len(es)-1].Seq {
			t.Errorf("entry %d came after %d", next.Seq, es[len(es)-1].Seq)
		}
	}
}

// What the book had to put right is pointed to until it has been read, and can be
// read to its end in the smallest window, also where no smelt is open.
func TestMessagesCanBeReadToTheirEnd(t *testing.T) {
	var told []string
	for i := range 12 {
		told = append(told, fmt.Sprintf("2026-05-09-reedhollow-a: %d entries were in the twin alone and were taken into the book; what gave way stands in /home/crew/.local/share/chargehand/%s.aside-%d", i+1, strings.Repeat("twins/", 14), i))
	}
	for name, d := range map[string]*desk.Desk{"at the start": desk.Sit(t), "at the fire": desk.Practising(t)} {
		t.Run(name, func(t *testing.T) {
			d.T = t
			for _, size := range [][2]int{desk.Small, {40, 12}, desk.Usual} {
				d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				d.Send(tui.Kept{Told: told})
				d.Shows("v b has this and")
				d.Press("x") // the line goes with the next key, what points to the page stays
				d.Shows("v b READ: 12 messages")
				d.Press("v", "b")
				var read strings.Builder
				for last := ""; last != d.Picture(); d.Press("pgdown") {
					last = d.Picture()
					read.WriteString(last)
				}
				all := strings.Join(strings.Fields(read.String()), "")
				for i := range told {
					if !strings.Contains(all, fmt.Sprintf("aside-%d", i)) {
						t.Errorf("at %v the end of message %d was not to be read:\n%s", size, i+1, read.String())
					}
				}
				if strings.Contains(d.Picture(), "READ") {
					t.Error("it is pointed to though it was read")
				}
				d.Press("esc", "esc")
			}
		})
	}
}
