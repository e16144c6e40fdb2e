package screen

import "testing"

// Keys are written as they stand on a keyboard, those that nothing is bound to as well.
func TestKeyLabel(t *testing.T) {
	for k, want := range map[string]string{"f": "f", "f9": "F9", "f12": "F12", "ctrl+c": "ctrl c", "ctrl+x": "ctrl x", "+": "+", "up": "↑", "alt+enter": "alt enter"} {
		if got := KeyLabel(k); got != want {
			t.Errorf("%s is written %q, want %q", k, got, want)
		}
	}
}
