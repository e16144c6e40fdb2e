package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"chargehand/model/rule"
	"chargehand/physics/shaft"
)

// What stands behind a number or a rule is one of four: a publication with its
// year, a fit that a command in this tree makes again, a computation by a named
// version of a library, or an assumption that says so.
var (
	publishedSource = regexp.MustCompile(`^published: .*\b(1[6-9]|20)\d\d\b`)
	fittedSource    = regexp.MustCompile(`^fitted here: go test -run (\w+) -v \./([\w/]+)`)
	outsideSource   = regexp.MustCompile(`^computed outside: .*\d+\.\d+.*\(.*\)`)
	assumedSource   = regexp.MustCompile(`^assumed: \w`)
)

// Every source of the tables is one that anybody can open, run, or take as an
// assumption.
func TestSourcesCanBeOpened(t *testing.T) {
	check := func(of, source string) {
		for piece := range strings.SplitSeq(source, "; ") {
			fitted := fittedSource.FindStringSubmatch(piece)
			switch {
			case fitted != nil:
				if !hasTest(t, fitted[2], fitted[1]) {
					t.Errorf("%s: no test %s in %s", of, fitted[1], fitted[2])
				}
			case publishedSource.MatchString(piece), outsideSource.MatchString(piece), assumedSource.MatchString(piece):
			default:
				t.Errorf("%s rests on %q", of, piece)
			}
		}
	}
	for _, row := range shaft.ParamTable {
		check(row.Name, row.Source)
	}
	for _, row := range rule.Table {
		check(string(row.ID), row.Source)
	}
	for _, c := range rule.Cautions {
		check(c.ID, c.Source)
	}
}

func hasTest(t *testing.T, dir, name string) bool {
	files, err := filepath.Glob(filepath.Join(root, dir, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range files {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "func "+name+"(") {
			return true
		}
	}
	return false
}

// closed are documents that are neither published nor in this tree.
var closed = regexp.MustCompile(`(?i)calibration ` + `study|reference ` + `notes|recommended ` + `model|research ` + `prototype|study of (sixteen|the published)|rules of ` + `the trade|flow ` + `notes|own ` + `study`)

// Nothing cites what nobody else can open.
func TestNothingCitesAClosedDocument(t *testing.T) {
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != root {
			return filepath.SkipDir
		}
		switch filepath.Ext(path) {
		case ".go", ".md", ".csv":
		default:
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		// A comment breaks its lines where it likes.
		flat := strings.Join(strings.Fields(strings.ReplaceAll(string(text), "//", " ")), " ")
		for _, hit := range closed.FindAllString(flat, -1) {
			if filepath.Base(path) != "sources_test.go" {
				t.Errorf("%s cites %q", path, hit)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
