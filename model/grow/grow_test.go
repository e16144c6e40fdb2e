package grow

import (
	"slices"
	"sync"
	"testing"
)

// Copies share their beginning and go their own ways.
func TestCopiesGoTheirOwnWays(t *testing.T) {
	var a List[int]
	for i := range 20 {
		a.Append(i)
	}
	b, c := a, a.Cut(10)
	a.Append(100)
	b.Append(200)
	c.Append(300)
	a.Append(101)
	for _, want := range []struct {
		of   List[int]
		ends []int
	}{{a, []int{18, 19, 100, 101}}, {b, []int{18, 19, 200}}, {c, []int{8, 9, 300}}} {
		if all := want.of.All(); !slices.Equal(all[len(all)-len(want.ends):], want.ends) || all[5] != 5 {
			t.Errorf("%v, want it to end with %v", all, want.ends)
		}
	}
}

// Growing one copy disturbs nobody who reads another.
func TestCopiesGrowAtTheSameTime(t *testing.T) {
	var a List[int]
	for i := range 5 {
		a.Append(i)
	}
	var all sync.WaitGroup
	for n := range 8 {
		all.Go(func() {
			mine := a
			for i := range 1000 {
				mine.Append(n*1000 + i)
			}
			for i, v := range mine.All()[5:] {
				if v != n*1000+i {
					t.Errorf("%d at %d of copy %d", v, i, n)
					return
				}
			}
		})
	}
	all.Wait()
}

// A cut one grows from there, and the whole is as it was.
func TestACutGrowsFromThere(t *testing.T) {
	var a Pages[int]
	for i := range 200 {
		a.Append(i)
	}
	for _, n := range []int{0, 1, 63, 64, 65, 128, 199, 200} {
		b := a.Cut(n)
		for i := range 70 {
			b.Append(1000 + i)
		}
		for i := range n {
			if *b.At(i) != i {
				t.Fatalf("cut at %d: %d at %d", n, *b.At(i), i)
			}
		}
		if *b.At(n) != 1000 || *b.At(n + 69) != 1069 || b.Len() != n+70 {
			t.Errorf("cut at %d: it goes on with %d", n, *b.At(n))
		}
	}
	for i := range 200 {
		if *a.At(i) != i {
			t.Fatalf("%d at %d of the whole", *a.At(i), i)
		}
	}
}
