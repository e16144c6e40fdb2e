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
	for _, k := range entry.Kinds() {
		e, err := entry.Decode([]byte(`{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05Z","kind":"` + string(k) + `","event":{}}`))
		if err != nil {
			t.Fatal(err)
		}
		if text := (Units{}).Event(e.Event); text == "" || strings.Contains(text, "newer") {
			t.Errorf("%s says %q", k, text)
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
