package main

import (
	"bytes"
	"context"
	"fmt"
	"html"
	"image"
	"image/jpeg"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/house"
	"chargehand/model/invented"
	"chargehand/model/plan"
	"chargehand/model/report"
	"chargehand/model/session"
	"chargehand/model/sheet"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/datapack"
)

// packagesAsked names the folder in which npm has put the package datapackage.
const packagesAsked = "CHARGEHAND_NODE_MODULES"

// readPackage reads a data package by the library of the standard's first version, and
// every table by its schema.
const readPackage = `const {Package} = require('datapackage');
(async () => {
  const p = await Package.load(process.argv[1]);
  if (!p.valid) throw new Error(p.errors.map(e => e.message).join('; '));
  for (const r of p.resources) console.log(r.name, (await r.read({keyed: true})).length);
})().catch(e => { console.error(e.message, (e.errors || []).map(x => x.message).join('; ')); process.exit(1); });`

// The folder of tables is taken by another program: by the npm library datapackage
// 1.1.10, whose profile the descriptor satisfies too.
func TestThePackageInAnotherProgram(t *testing.T) {
	modules := os.Getenv(packagesAsked)
	if modules == "" {
		t.Skip(packagesAsked + " is not set: .ci/run sets it")
	}
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	lines, err := persist.LinesOf(es)
	if err != nil {
		t.Fatal(err)
	}
	files, err := datapack.Files(datapack.Source{Stream: es[0].Stream, Lines: lines}, "")
	if err != nil {
		t.Fatal(err)
	}
	read := func() (string, error) {
		dir := t.TempDir()
		for name, text := range files {
			if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		cmd := exec.Command("node", "-e", readPackage, filepath.Join(dir, "datapackage.json"))
		cmd.Env = append(os.Environ(), "NODE_PATH="+modules)
		out, err := cmd.CombinedOutput()
		return string(out), err
	}
	if out, err := read(); err != nil || !strings.Contains(out, fmt.Sprintf("entries %d", len(es))) {
		t.Errorf("%v: %s", err, out)
	}
	files["lots.csv"] = bytes.Replace(files["lots.csv"], []byte("\r\n1,"), []byte("\r\none,"), 1)
	if out, err := read(); err == nil {
		t.Errorf("a spoilt table was taken: %s", out)
	}
}

// browserAsked names the script of axe-core, by which CI asks for the browser.
const browserAsked = "CHARGEHAND_AXE"

// The report in a browser: no rule of WCAG 2.2 A and AA that axe-core tests is broken,
// nothing is asked of the net, and on paper every row of what was keyed stands whole.
// It wants chromium, pdftotext and axe.min.js (its path in CHARGEHAND_AXE), which
// .ci/run installs; elsewhere it is skipped.
func TestTheReportInABrowser(t *testing.T) {
	axe := os.Getenv(browserAsked)
	if axe == "" {
		t.Skip(browserAsked + " is not set: .ci/run sets it")
	}
	script, err := os.ReadFile(axe)
	if err != nil {
		t.Fatal(err)
	}
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	lit := es[0].Happened
	var photos []report.Taken
	for i, at := range []time.Duration{-time.Hour, 3 * time.Hour, 5*time.Hour + 20*time.Minute} {
		photos = append(photos, report.Taken{At: fold.Digits(lit.Add(at)), JPEG: grey(t, 300+100*i, 200)})
	}
	r, err := report.Of(session.Open(es[0].Stream, es), es, nil, report.Options{Names: true, Photos: photos})
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := r.Page(&page, "printed"); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	plain, judged := filepath.Join(dir, "plain.html"), filepath.Join(dir, "judged.html")
	put := func(name, text string) {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	put(plain, page.String())
	put(judged, judging(page.String(), string(script)))

	dom, _ := browser(t, dir, "--virtual-time-budget=30000", "--dump-dom", "file://"+judged)
	judge(t, dom)
	if want := fmt.Sprintf(`data-pictures="%d of %[1]d"`, len(photos)); !strings.Contains(dom, want) {
		t.Errorf("not every photo is shown: want %s", want)
	}
	pdf := filepath.Join(dir, "page.pdf")
	_, console := browser(t, dir, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+plain)
	if strings.Contains(console, "CONSOLE") || strings.Contains(console, "ERR_NAME") {
		t.Errorf("the page asked for something: %s", console)
	}
	text, err := exec.Command("pdftotext", "-layout", pdf, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(text), "\n")
	for _, p := range r.Photos {
		if !strings.Contains(strings.Join(strings.Fields(string(text)), " "), strings.Join(strings.Fields(p.Time+p.Says), " ")) {
			t.Errorf("on paper the photo of %s is not told: %s", p.Time, p.Says)
		}
	}
	whole := 0
	for _, e := range r.Entries {
		want := strings.Join(strings.Fields(e.What), " ")
		want = want[:min(40, len(want))]
		for _, l := range lines {
			if l = strings.Join(strings.Fields(l), " "); strings.HasPrefix(l, e.Time) && strings.Contains(l, want) {
				whole++
				break
			}
		}
	}
	if whole != len(r.Entries) || whole == 0 {
		t.Errorf("%d of %d rows of what was keyed stand whole on paper", whole, len(r.Entries))
	}
}

// grey is a picture without anything on it.
func grey(t *testing.T, w, h int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, w, h)), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// judging is a page with axe-core in it, which leaves what it found on the page.
func judging(page, axe string) string {
	const ask = `axe.run(document,{runOnly:["wcag2a","wcag2aa","wcag21a","wcag21aa","wcag22aa"]}).then(r=>{` +
		`const i=[...document.images];document.documentElement.dataset.pictures=i.filter(p=>p.naturalWidth>0).length+" of "+i.length;` +
		`document.documentElement.dataset.axe=r.passes.length+" "+r.violations.map(v=>v.id+" "+v.nodes.map(n=>n.html)).join("; ")})`
	return strings.Replace(page, "</body>", "<script>"+axe+"</script><script>"+ask+"</script></body>", 1)
}

// judge reads it off.
func judge(t *testing.T, dom string) {
	t.Helper()
	said := regexp.MustCompile(`data-axe="(\d+) ([^"]*)"`).FindStringSubmatch(dom)
	switch {
	case said == nil:
		t.Fatalf("axe said nothing; the page is %.300s", dom)
	case said[1] == "0" || said[2] != "":
		t.Errorf("axe: %s rules kept, broken: %s", said[1], html.UnescapeString(said[2]))
	}
}

// The sheets in a browser: the same rules, and on paper the log of a usual plan is one
// page with every planned row whole, the wall another, whether something is planned and
// keyed or nothing.
func TestTheSheetInABrowser(t *testing.T) {
	axe := os.Getenv(browserAsked)
	if axe == "" {
		t.Skip(browserAsked + " is not set: .ci/run sets it")
	}
	script, err := os.ReadFile(axe)
	if err != nil {
		t.Fatal(err)
	}
	h := house.State{Measures: []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}, {Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))}}}
	kept := plan.Of(plan.Ask{Want: plan.Want{What: entry.BloomPiece, Kg: 4, Sure: 0.5}, Smelts: 10}).Kept(h, "usual")
	kept.Name, kept.Day = "bloom of 4 kg", "2026-06-12"
	keyed := h
	keyed.WallWords = entry.WallWords{Wall: []string{"Mill Lane, second gate past the chapel (invented)", "112", "stream 40 m downhill; extinguisher in the van", "fire office, 8 May", "the gate code is on the board"}}
	keyed.Lessons = []entry.Lesson{{Text: "weigh the slag cake whole"}, {Text: "half a scoop less at the start"}, {Text: "more people at the pull"}}
	for name, s := range map[string]sheet.Sheet{
		"blank":   sheet.Of(sheet.FromHouse(house.State{}, nil, 8*time.Hour)),
		"planned": sheet.Of(sheet.FromHouse(keyed, &house.Plan{Plan: kept}, 8*time.Hour)),
	} {
		t.Run(name, func(t *testing.T) {
			var page bytes.Buffer
			if err := s.Page(&page, "printed"); err != nil {
				t.Fatal(err)
			}
			dir := t.TempDir()
			plain, judged, pdf := filepath.Join(dir, "plain.html"), filepath.Join(dir, "judged.html"), filepath.Join(dir, "page.pdf")
			for name, text := range map[string]string{plain: page.String(), judged: judging(page.String(), string(script))} {
				if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
					t.Fatal(err)
				}
			}
			dom, _ := browser(t, dir, "--virtual-time-budget=30000", "--dump-dom", "file://"+judged)
			judge(t, dom)
			if _, console := browser(t, dir, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+plain); strings.Contains(console, "CONSOLE") || strings.Contains(console, "ERR_NAME") {
				t.Errorf("the page asked for something: %s", console)
			}
			text, err := exec.Command("pdftotext", "-layout", pdf, "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
			if len(pages) != 2 || !strings.Contains(pages[1], words.SheetWall) {
				t.Fatalf("%d pages", len(pages))
			}
			for _, r := range s.Rows {
				if r.Time != "" && !regexp.MustCompile(regexp.QuoteMeta(r.Time)+` +`+regexp.QuoteMeta(r.Planned)+` +`+r.Letter).MatchString(pages[0]) {
					t.Errorf("%+v is not whole on the first page", r)
				}
			}
			for _, f := range s.Wall {
				if !strings.Contains(strings.Join(strings.Fields(pages[1]), " "), f.Name) {
					t.Errorf("%q is not on the wall", f.Name)
				}
			}
		})
	}
}

// browser runs chromium without a screen, with no name that leads anywhere.
func browser(t *testing.T, dir string, args ...string) (out, console string) {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 4*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, "chromium", append([]string{
		"--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir=" + filepath.Join(dir, "profile"),
		"--host-resolver-rules=MAP * ~NOTFOUND", "--enable-logging=stderr", "--log-level=0",
	}, args...)...)
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil {
		t.Fatalf("chromium: %v: %.2000s", err, stderr.String())
	}
	return stdout.String(), stderr.String()
}
