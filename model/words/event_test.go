package words

import (
	"slices"
	"strings"
	"testing"

	"chargehand/model/entry"
)

// Every kind of event has words of its own.
func TestEveryKindHasWords(t *testing.T) {
	for _, k := range entry.Kinds() {
		if eventWords[k] == nil {
			t.Errorf("%s has no words", k)
		}
	}
	for k := range eventWords {
		if !slices.Contains(entry.Kinds(), k) {
			t.Errorf("words for %s, which is no kind", k)
		}
	}
}

func TestWhatIsNotKnownSaysSo(t *testing.T) {
	if got := (Units{}).Event(entry.Unknown{Name: "moon"}); got != "moon, written by a newer version" {
		t.Errorf("got %q", got)
	}
	if got := (Units{}).Event(nil); !strings.Contains(got, "without an event") {
		t.Errorf("got %q", got)
	}
}
