package help

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"chargehand/tui/book"
	"chargehand/tui/fire"
	"chargehand/tui/replay"
	"chargehand/tui/screen"
	"chargehand/tui/shelf"
	"chargehand/tui/start"
)

// Every key of a screen, of every screen, and of the list of rare acts stands in
// the help, in every width.
func TestEveryKeyIsInTheHelp(t *testing.T) {
	for _, behind := range []screen.Screen{fire.New(), book.New(), replay.New(), shelf.New(), start.New(screen.Starter{}), New()} {
		sh := &screen.Shared{W: 80, H: 24, Behind: behind}
		var b strings.Builder
		for _, l := range lines(sh) {
			b.WriteString(l.name + "\t" + l.text + "\n")
		}
		all := append(behind.Keys().All(), screen.Global.All()...)
		if more, ok := behind.(screen.Explained); ok {
			_, keys := more.Explains()
			all = append(all, keys...)
		}
		for _, bind := range all {
			if !strings.Contains(b.String(), screen.AllKeys(bind)+"\t"+bind.Help().Desc) {
				t.Errorf("help of %s lacks %s: %s", behind.ID(), screen.AllKeys(bind), bind.Help().Desc)
			}
		}
	}
}

// All of it can be scrolled to, and nothing is cut off at the side.
func TestHelpScrollsToItsEnd(t *testing.T) {
	for _, w := range []int{40, 80, 120, 200} {
		sh := &screen.Shared{W: w, H: 24, Behind: fire.New()}
		room := bodyOf(sh.W, sh.H)
		all := text(sh, room)
		var h screen.Screen = New()
		seen := map[string]bool{}
		for range len(all)/room.H + 2 {
			for _, row := range strings.Split(h.(Screen).scroll.Shows(all, room.W, room.H), "\n") {
				seen[strings.TrimSpace(ansi.Strip(row))] = true
			}
			h, _ = h.Update(sh, screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyPgDown}})
		}
		for _, row := range all {
			if plain := strings.TrimSpace(ansi.Strip(row)); !seen[plain] {
				t.Fatalf("%d columns: %q is never seen", w, plain)
			}
			if n := ansi.StringWidth(row); n > room.W {
				t.Fatalf("%d columns: %d cells in %q", w, n, row)
			}
		}
	}
}
