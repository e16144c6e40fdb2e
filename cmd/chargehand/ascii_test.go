package main

import "testing"

// A place without UTF-8, and a terminal without the marks, get ASCII by themselves.
func TestASCIIByItself(t *testing.T) {
	for _, c := range []struct {
		env   map[string]string
		ascii bool
	}{
		{map[string]string{"TERM": "xterm-256color"}, false},
		{map[string]string{"TERM": "xterm-256color", "LANG": "C"}, true},
		{map[string]string{"TERM": "xterm-256color", "LANG": "C.UTF-8"}, false},
		{map[string]string{"TERM": "xterm-256color", "LANG": "de_DE.UTF-8", "LC_ALL": "POSIX"}, true},
		{map[string]string{"TERM": "linux", "LANG": "C.UTF-8"}, true},
		{map[string]string{"TERM": "vt220", "LANG": "C.UTF-8"}, true},
		{map[string]string{"TERM": "screen.xterm-256color", "LANG": "C.UTF-8"}, false},
		{map[string]string{"TERM": "tmux-256color"}, false},
	} {
		w := world{getenv: func(name string) string { return c.env[name] }}
		if got := themeOf(w, common{}).ASCII; got != c.ascii {
			t.Errorf("%v: ASCII is %v", c.env, got)
		}
	}
}
