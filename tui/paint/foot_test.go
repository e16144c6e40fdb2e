package paint

import (
	"strings"
	"testing"

	"chargehand/model/words"
	"chargehand/tui/theme"
)

// A charge keyed while a list is open is not booked: the foot says so where it
// asks, whatever the list.
func TestRefusedKeyIsAnsweredInAnOpenList(t *testing.T) {
	th := theme.Theme{}
	ask := &Ask{Label: words.LookWhere, Hint: words.EscCloses}
	foot := func(a Answer) string {
		g := th.Grid(80, FootRows)
		Foot(g, th, a, ask, nil, KeyHint{})
		return g.String()
	}
	why := words.NotInList("c")
	if said := foot(Answer{Text: why, State: Refused}); !strings.Contains(said, words.LookWhere) || !strings.Contains(said, "nothing in this list on c") {
		t.Errorf("a refused key is not answered:\n%s", said)
	}
	if said := foot(Answer{Text: "charge 1", State: IsKept}); !strings.Contains(said, words.EscCloses) || strings.Contains(said, "charge 1") {
		t.Errorf("the answer to an earlier act stands beside the question:\n%s", said)
	}
}
