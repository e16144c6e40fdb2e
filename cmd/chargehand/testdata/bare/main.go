// Command bare is the least program of the same libraries: it opens a bbolt file,
// shows a full screen, and changes one line of it a second. What the real program
// costs at its start and while nobody touches it is held against it.
package main

import (
	"os"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"go.etcd.io/bbolt"

	_ "chargehand/tui/ground" // so that neither asks the terminal
)

type second time.Time

type screen struct {
	w, h int
	at   time.Time
	bold lipgloss.Style
}

func tick() tea.Cmd { return tea.Every(time.Second, func(t time.Time) tea.Msg { return second(t) }) }

func (s screen) Init() tea.Cmd { return tick() }

func (s screen) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		s.w, s.h = msg.Width, msg.Height
	case second:
		s.at = time.Time(msg)
		return s, tick()
	}
	return s, nil
}

func (s screen) View() string {
	if s.h < 2 {
		return ""
	}
	line := strings.Repeat("x", s.w) + "\n"
	return s.bold.Render(s.at.Format(time.TimeOnly)) + "\n" + strings.Repeat(line, s.h-2) + "help"
}

// Its argument is the file.
func main() {
	db, err := bbolt.Open(os.Args[1], 0o600, nil)
	if err != nil {
		panic(err)
	}
	defer db.Close()
	if _, err := tea.NewProgram(screen{at: time.Now(), bold: lipgloss.NewStyle().Bold(true)}, tea.WithAltScreen(), tea.WithFPS(22)).Run(); err != nil {
		panic(err)
	}
}
