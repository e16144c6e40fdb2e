//go:build linux

package main

import (
	"fmt"
	"testing"
	"time"
)

// A glove leans on a key for a minute, at thirty a second, which is how fast
// keyboards repeat (common practice), in the last of ten hours with 500 entries;
// then another key is pressed, and its answer waited for.
//
//	go test ./cmd/chargehand -run '^$' -bench Leaning -benchtime 1x -timeout 30m
func BenchmarkLeaning(b *testing.B) {
	for _, key := range []string{"s", "up", "m", "book"} {
		b.Run(key, func(b *testing.B) {
			var answered []time.Duration
			for range b.N {
				dir := b.TempDir()
				workedDay(b, dir)
				w := openWire(b, dir, 200, 60)
				w.until("go on with")
				w.press("g")
				w.until("this is")
				leans := map[string]string{"up": "\x1b[A", "book": "\x1b[A"}[key]
				if leans == "" {
					leans = key
				}
				next, says := "r", "rodded the tuyere"
				if key == "book" { // moving about, which is not gathered
					w.press("v")
					w.press("b")
					w.until("what was done")
					next, says = "k", "show one kind"
				}
				every := time.NewTicker(time.Second / 30)
				for range 60 * 30 {
					<-every.C
					w.press(leans)
				}
				every.Stop()
				time.Sleep(34 * time.Millisecond)
				w.skip()
				pressed := time.Now()
				w.press(next)
				answered = append(answered, w.until(says).Sub(pressed))
				w.end()
			}
			tell(b, answered, "answer")
			b.Log(fmt.Sprint(answered))
		})
	}
}
