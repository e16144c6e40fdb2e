package report_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/report"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
)

// lit is when the smelts of these tests are lit.
var lit = time.Date(2026, 5, 9, 8, 40, 0, 0, time.UTC)

// page writes the report of a smelt and parses it.
func page(t testing.TB, es, house []entry.Entry, o report.Options) (report.Report, *html.Node) {
	t.Helper()
	r, err := report.Of(session.Open(es[0].Stream, es), es, house, o)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := r.Page(&b, "printed"); err != nil {
		t.Fatal(err)
	}
	doc, err := html.Parse(&b)
	if err != nil {
		t.Fatal(err)
	}
	return r, doc
}

func demo(t testing.TB) []entry.Entry {
	t.Helper()
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// all are the elements of a kind below a node, in order.
func all(n *html.Node, kind string) (found []*html.Node) {
	for c := range n.Descendants() {
		if c.Type == html.ElementNode && c.Data == kind {
			found = append(found, c)
		}
	}
	return found
}

func text(n *html.Node) string {
	var b strings.Builder
	for c := range n.Descendants() {
		if c.Type == html.TextNode {
			b.WriteString(c.Data)
		}
	}
	return strings.TrimSpace(b.String())
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func with(ns []*html.Node, key, value string) (found []*html.Node) {
	for _, n := range ns {
		if attr(n, key) == value {
			found = append(found, n)
		}
	}
	return found
}

// Every point that is drawn stands in the table of numbers, and the other way round:
// read back from the page by the marks on the axis beside it.
func TestThePlotsShowWhatTheTableSays(t *testing.T) {
	for _, es := range [][]entry.Entry{demo(t), logcsvtest.Read(t, "03", logcsv.Options{})} {
		r, doc := page(t, es, nil, report.Options{})
		rows := all(with(all(doc, "table"), "class", "numbers")[0], "tr")[1:]
		drawn := map[string]*html.Node{}
		for _, svg := range all(doc, "svg") {
			drawn[strings.TrimSuffix(strings.Fields(attr(svg, "aria-labelledby") + " x")[0], "-t")] = svg
		}
		points := 0
		for col, p := range r.Plots {
			var told []float64
			for _, row := range rows {
				cell := text(all(row, "td")[col])
				if cell == words.NotKnown {
					continue
				}
				v, err := strconv.ParseFloat(strings.ReplaceAll(strings.Fields(cell)[0], ",", ""), 64)
				if err != nil {
					t.Fatalf("%s: %q is no number", p.Title, cell)
				}
				told = append(told, v)
			}
			svg, is := drawn[p.ID]
			if !is {
				if len(told) > 0 {
					t.Errorf("%s has %d numbers and no plot", p.Title, len(told))
				}
				continue
			}
			var marks [][2]float64 // where a mark of the axis stands, and its value
			for _, x := range with(all(svg, "text"), "x", "48") {
				y, _ := strconv.ParseFloat(attr(x, "y"), 64)
				v, err := strconv.ParseFloat(text(x), 64)
				if err != nil {
					t.Fatal(err)
				}
				marks = append(marks, [2]float64{y, v})
			}
			a, b := marks[0], marks[len(marks)-1]
			perUnit := (b[0] - a[0]) / (b[1] - a[1])
			circles := all(svg, "circle")
			if len(circles) != len(told) {
				t.Errorf("%s: %d points and %d numbers", p.Title, len(circles), len(told))
				continue
			}
			for i, c := range circles {
				y, _ := strconv.ParseFloat(attr(c, "cy"), 64)
				shown := a[1] + (y-a[0])/perUnit
				if off := 0.5*math.Pow10(-p.Decimals) + 0.02/math.Abs(perUnit); math.Abs(shown-told[i]) > off {
					t.Errorf("%s: a point at %g, in the table %g", p.Title, shown, told[i])
				}
				points++
			}
		}
		if points < 100 {
			t.Errorf("only %d points were compared", points)
		}
	}
}

// No link leaves the page, nothing is fetched, and every drawing says what it is.
func TestThePageAsksForNothing(t *testing.T) {
	_, doc := page(t, demo(t), nil, report.Options{Names: true, Places: true})
	for n := range doc.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		switch n.DataAtom {
		case atom.Script, atom.Link, atom.Img, atom.Iframe, atom.Object, atom.Embed, atom.A, atom.Form:
			t.Errorf("the page has a <%s>", n.Data)
		}
		for _, a := range n.Attr {
			if a.Key == "href" || a.Key == "src" || strings.Contains(a.Val, "//") {
				t.Errorf("<%s %s=%q>", n.Data, a.Key, a.Val)
			}
		}
		if n.Data == "style" && (strings.Contains(text(n), "url(") || strings.Contains(text(n), "@import")) {
			t.Error("the style fetches something")
		}
		if n.Data == "svg" && attr(n, "aria-hidden") == "" {
			for _, id := range strings.Fields(attr(n, "aria-labelledby")) {
				if len(with(all(n, "title"), "id", id))+len(with(all(n, "desc"), "id", id)) != 1 {
					t.Errorf("a drawing is labelled by %q, which it does not have", id)
				}
			}
			if attr(n, "role") != "img" || len(all(n, "title")) == 0 || len(all(n, "desc")) == 0 {
				t.Error("a drawing has no title or description")
			}
		}
	}
	ids := map[string]bool{}
	for n := range doc.Descendants() {
		if id := attr(n, "id"); id != "" {
			if ids[id] {
				t.Errorf("two elements have the id %q", id)
			}
			ids[id] = true
		}
	}
}

// Initials, where ore is from, and incidents are there only when asked for.
func TestWhatIsLeftOutUnlessAsked(t *testing.T) {
	es := demo(t)
	light := es[0].Event.(entry.Light)
	light.Lots = append([]entry.Lot(nil), light.Lots...)
	light.Lots[0].Origin = "Adder Moor"
	es[0].Event = light
	last := es[len(es)-1]
	last.Seq++
	last.Event = entry.Incident{What: entry.IncidentNearMiss, Note: "a barrow tipped"}
	es = append(es, last)
	secrets := map[string]func(*report.Options){
		"Adder Moor":      func(o *report.Options) { o.Places = true },
		"a barrow tipped": func(o *report.Options) { o.Incidents = true },
		"MK":              func(o *report.Options) { o.Names = true },
	}
	_, doc := page(t, es, nil, report.Options{})
	plain := text(doc)
	for secret, ask := range secrets {
		if strings.Contains(plain, secret) {
			t.Errorf("%q is printed though nobody asked for it", secret)
		}
		var o report.Options
		ask(&o)
		if _, doc := page(t, es, nil, o); !strings.Contains(text(doc), secret) {
			t.Errorf("%q is asked for and not printed", secret)
		}
	}
	if !strings.Contains(plain, words.ReportNoNames) || !strings.Contains(plain, words.ReportNoPlaces) || !strings.Contains(plain, words.ReportHasNoInc) {
		t.Error("the foot does not say what is left out")
	}
}

// What was doubted when it was keyed, and kept all the same, says so beside its entry.
func TestWhatWasDoubtedSaysSoInPrint(t *testing.T) {
	var es []entry.Entry
	for i, ev := range []entry.Event{entry.Light{UID: "u"}, entry.Blast{Volume: entry.Some[entry.LitrePerMinute](3600)}, entry.Tap{}} {
		at := lit.Add(time.Duration(i) * 10 * time.Minute)
		es = append(es, entry.Entry{Version: entry.Version, Stream: "s", Seq: uint64(i + 1), Happened: at, Kept: at, Event: ev})
	}
	es[1].Sure = "blast_jumps"
	_, doc := page(t, es, nil, report.Options{})
	if want := words.KeptThough("blast_jumps"); strings.Count(text(doc), want) != 1 {
		t.Errorf("%q stands %d times on the page", want, strings.Count(text(doc), want))
	}
}

// What was wanted by a plan stands with the chance that it was made for.
func TestWhatWasWantedIsPrintedWithItsChance(t *testing.T) {
	light := entry.Light{UID: "u", Plan: &entry.PlanTaken{Wanted: entry.Wanted{What: entry.BloomPiece, Mass: entry.Some(entry.Kilogram(5))}, Sure: entry.Some(entry.Share(0.5))}}
	r, _ := page(t, []entry.Entry{{Version: entry.Version, Stream: "s", Seq: 1, Happened: lit, Kept: lit, Event: light}}, nil, report.Options{})
	if want := (report.Fact{Name: words.ReportWanted, Says: "bloom 5 kg, about 5 in 10"}); r.Facts[0] != want {
		t.Errorf("%+v, want %+v", r.Facts[0], want)
	}
}

// The pieces that came of the smelt stand with how much came so far, of what; to whom one
// went only when names are asked for.
func TestPiecesNameTheirBase(t *testing.T) {
	es := demo(t)
	uid := es[0].Event.(entry.Light).UID
	kg := func(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }
	const bloom, billet entry.UID = "00000000000000f1", "00000000000000f2"
	var h []entry.Entry
	for _, ev := range []entry.Event{
		entry.Piece{UID: bloom, Form: entry.BloomPiece, From: []entry.PieceFrom{{Smelt: uid}}, Mass: kg(4)},
		entry.ForgeSession{Pieces: []entry.UID{bloom}, Did: []entry.Forged{entry.Consolidated}},
		entry.Piece{UID: billet, Form: entry.Billet, Name: "the billet", From: []entry.PieceFrom{{Piece: bloom}}, Mass: kg(2)},
		entry.PieceTested{Piece: billet, Test: "spark", Result: "long plain rays", Place: "tip"},
		entry.Piece{UID: billet, Form: entry.Billet, Name: "the billet", From: []entry.PieceFrom{{Piece: bloom}}, Mass: kg(2), EndsAs: entry.EndSold, To: "Orrin"},
		entry.Piece{UID: "00000000000000f3", Form: entry.Bar, Name: "of elsewhere", Mass: kg(1)},
	} {
		h = append(h, entry.Entry{Version: 1, Stream: entry.House, Seq: uint64(len(h) + 1), Happened: es[len(es)-1].Happened.AddDate(0, 0, len(h)+1), Event: ev})
	}
	_, doc := page(t, es, h, report.Options{})
	plain := text(doc)
	for _, want := range []string{"the billet", "50 % of bloom; ", "of the ore, dry", "spark: long plain rays, at tip", "sold"} {
		if !strings.Contains(plain, want) {
			t.Errorf("no %q on the page", want)
		}
	}
	for _, not := range []string{"of elsewhere", "Orrin"} {
		if strings.Contains(plain, not) {
			t.Errorf("%q is on the page", not)
		}
	}
	if _, doc := page(t, es, h, report.Options{Names: true}); !strings.Contains(text(doc), "Orrin") {
		t.Error("who bought it was asked for and is not there")
	}
}

// What somebody typed is text on the page, whatever it looks like.
func FuzzHostileNames(f *testing.F) {
	for _, s := range []string{"<script>alert(1)</script>", `"><img src=x onerror=y>`, "</title></svg><b>", "&lt;b&gt; & ]]>", "{{.}} ${x} javascript:0", "</style><i>", "\u202eabc"} {
		f.Add(s)
	}
	shape := func(doc *html.Node) string {
		var b strings.Builder
		for n := range doc.Descendants() {
			if n.Type == html.ElementNode {
				b.WriteString(n.Data + " ")
			}
		}
		return b.String()
	}
	smelt := func(name string) []entry.Entry {
		events := []entry.Event{
			entry.Light{UID: "u", Trying: name, Furnace: entry.Furnace{Name: name}, Lots: []entry.Lot{{Name: name, What: entry.Ore, Origin: name}}, Measures: []entry.Measure{{Name: name, What: entry.Charcoal, Mass: entry.Some[entry.Kilogram](1.8)}}},
			entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Measure: name, Count: entry.Some[entry.Count](1)}, {What: entry.Ore, Lot: name, Mass: entry.Some[entry.Kilogram](1)}}},
			entry.Note{Text: name}, entry.HandOver{To: name}, entry.Extract{From: name},
		}
		var es []entry.Entry
		for i, ev := range events {
			at := lit.Add(time.Duration(i) * 10 * time.Minute)
			es = append(es, entry.Entry{Version: entry.Version, Stream: "s", Seq: uint64(i + 1), Happened: at, Kept: at, By: name, Event: ev})
		}
		return es
	}
	o := report.Options{Names: true, Places: true, Incidents: true}
	_, harmless := page(f, smelt("birch"), nil, o)
	want := shape(harmless)
	f.Fuzz(func(t *testing.T, name string) {
		if name == "" || strings.TrimSpace(name) != name || strings.ContainsAny(name, "\x00\r\n\f\t") || strings.ToValidUTF8(name, "") != name || strings.ContainsFunc(name, func(r rune) bool { return r < 0x20 || r >= 0x7f && r < 0xa0 || r >= 0xfdd0 }) {
			t.Skip("no name that can be keyed, or one that HTML has no text for")
		}
		_, doc := page(t, smelt(name), nil, o)
		if got := shape(doc); got != want {
			t.Errorf("%q changes the page's elements", name)
		}
		if n := strings.Count(text(doc), name); n < 5 {
			t.Errorf("%q is found %d times as text", name, n)
		}
	})
}

// A report of a long smelt costs well under a second.
//
//	go test ./model/report -run '^$' -bench Report
func BenchmarkReport(b *testing.B) {
	es := demo(b)
	for b.Loop() {
		r, err := report.Of(session.Open(es[0].Stream, es), es, nil, report.Options{})
		if err != nil {
			b.Fatal(err)
		}
		var out bytes.Buffer
		if err := r.Page(&out, "x"); err != nil {
			b.Fatal(err)
		}
	}
}
