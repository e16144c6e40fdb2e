package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const root = "../.."

// arrows say which packages of ours a package may import; what is not listed
// imports none. A name stands for the packages below it too, but for the one
// that has a line of its own; "tui/*" for every screen, which so imports no other.
var arrows = map[string][]string{
	"cmd":              {"tui", "persist", "model", "physics"},
	"tui":              {"model", "tui"},
	"tui/*":            {"tui/act", "tui/scene", "tui/screen", "tui/draw", "tui/chart", "tui/letter", "tui/cell", "tui/theme", "tui/words", "model"},
	"tui/rehearsal":    {"tui/act", "tui/screen", "tui/draw", "tui/shaft", "tui/chart", "tui/letter", "tui/cell", "tui/theme", "tui/words", "model"},
	"tui/ground":       nil,
	"tui/cell":         nil,
	"tui/glow":         nil,
	"tui/letter":       {"tui/cell"},
	"tui/chart":        {"tui/cell", "tui/glow", "tui/theme"},
	"tui/shaft":        {"tui/cell", "tui/glow", "tui/theme", "model/picture", "model/words"},
	"tui/theme":        {"tui/cell"},
	"tui/words":        {"model"},
	"tui/draw":         {"tui/cell", "tui/glow", "tui/letter", "tui/chart", "tui/shaft", "tui/theme", "tui/words", "model", "physics"},
	"tui/screen":       {"tui/draw", "tui/cell", "tui/theme", "tui/words", "model"},
	"tui/act":          {"tui/screen", "tui/draw", "tui/cell", "tui/theme", "tui/words", "model"},
	"tui/scene":        {"tui/act", "tui/screen", "tui/draw", "tui/letter", "tui/cell", "tui/theme", "tui/words", "model"},
	"tui/scene/scenes": {"tui/scene", "tui/draw", "tui/cell", "tui/theme", "tui/words", "model", "physics"},
	"tui/desk":         {"tui", "model"},
	"tui/keyboards":    nil,
	"persist":          {"model", "persist"},
	"persist/disk":     {"model/words"},
	"persist/twin":     {"model/entry", "model/words", "persist/disk"},
	"persist/boltfile": {"model/entry", "model/shelf", "model/words", "persist/disk", "persist/twin"},
	"persist/logcsv":   {"model"},
	"model":            {"model", "physics"},
	"model/entry":      nil,
	"model/words":      {"model", "physics"},
	"model/fold":       {"model/entry", "model/grow", "model/pace", "physics"},
	"model/pace":       {"model/grow"},
	"model/grow":       nil,
	"model/figure":     {"model/entry", "model/fold", "model/forecast", "model/learn", "model/rule", "model/solve", "physics"},
	"model/session":    {"model/entry", "model/figure", "model/fold", "model/grow", "model/learn", "model/ore", "model/rule", "model/shelf", "model/solve", "physics"},
	"model/solve":      {"model/entry", "model/fold", "model/ore", "physics"},
	"model/picture":    {"model/entry", "model/figure", "physics"},
	"model/house":      {"model/entry", "model/fold", "physics"},
	"model/shelf":      {"model/entry", "model/fold", "model/house", "model/pace"},
	"model/forge":      {"model/account", "model/entry", "model/house", "model/shelf"},
	"model/doubt":      {"model/entry", "model/figure", "model/fold", "model/forge", "model/house", "model/rule", "physics"},
	"model/lot":        {"model/account", "model/doubt", "model/entry", "model/house", "model/ore", "physics"},
	"model/plan":       {"model/account", "model/ahead", "model/doubt", "model/entry", "model/fold", "model/house", "model/learn", "model/solve", "physics"},
	"model/invented":   {"model/entry"},
	"model/truth":      {"physics"},
	"model/ahead":      {"model/entry", "model/figure", "model/fold", "model/rule", "model/session", "model/solve", "physics"},
	"model/why":        {"model/ahead", "model/entry", "model/fold", "model/pace", "model/session", "model/solve", "physics"},
	"model/rehearse":   {"model/ahead", "model/entry", "model/figure", "model/fold", "model/picture", "model/rule", "model/session", "model/solve", "model/truth", "model/truth/zones", "model/why", "physics"},
	"physics":          nil,
	"physics/shaft":    {"physics"},

	"model/truth/zones":   {"model/truth", "physics"},
	"model/invented/week": {"model/entry", "model/house", "model/invented", "model/learn", "model/plan"},

	"persist/logcsv/logcsvtest": {"persist/logcsv", "model/entry"},

	"cmd/chargehand/internal/tty": nil,
}

// forTests are packages that only tests import, and each other.
var forTests = []string{"chargehand/cmd/chargehand/internal/tty", "chargehand/persist/logcsv/logcsvtest", "chargehand/tui/desk", "chargehand/tui/keyboards", "chargehand/tui/scene/scenes"}

// The arrows of the house point one way. Tests may look further.
func TestPackageArrows(t *testing.T) {
	files := token.NewFileSet()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != root {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(files, path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		from := filepath.ToSlash(rel)
		allowed := arrows[rowOf(from)]
		for _, spec := range f.Imports {
			imported, _ := strconv.Unquote(spec.Path.Value)
			to, ours := strings.CutPrefix(imported, "chargehand/")
			if ours && !slices.ContainsFunc(allowed, func(a string) bool { return within(to, a) }) {
				t.Errorf("%s imports %s", path, imported)
			}
			if slices.Contains(forTests, imported) && !slices.Contains(forTests, "chargehand/"+from) {
				t.Errorf("%s imports %s, which is for tests", path, imported)
			}
			if within(from, "physics") && !ours && strings.Contains(imported, ".") && !strings.HasPrefix(imported, "gonum.org/") {
				t.Errorf("%s imports %s: physics has the standard library and gonum", path, imported)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// Imports stand in three groups: the standard library's, others', ours.
func TestImportsInGroups(t *testing.T) {
	group := func(path string) int {
		switch first, _, _ := strings.Cut(path, "/"); {
		case first == "chargehand":
			return 2
		case strings.Contains(first, "."):
			return 1
		}
		return 0
	}
	files := token.NewFileSet()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") {
			return err
		}
		f, err := parser.ParseFile(files, path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for i, spec := range f.Imports[min(1, len(f.Imports)):] {
			was, is := f.Imports[i], spec
			a, _ := strconv.Unquote(was.Path.Value)
			b, _ := strconv.Unquote(is.Path.Value)
			apart := files.Position(is.Pos()).Line-files.Position(was.End()).Line > 1
			if group(b) < group(a) || group(b) > group(a) && !apart {
				t.Errorf("%s: %s follows %s", path, b, a)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// rowOf is the line of arrows that a package goes by.
func rowOf(pkg string) string {
	if _, own := arrows[pkg]; !own && strings.HasPrefix(pkg, "tui/") {
		return "tui/*"
	}
	for p := pkg; p != "."; p = filepath.ToSlash(filepath.Dir(p)) {
		if _, ok := arrows[p]; ok {
			return p
		}
	}
	return pkg
}

func within(pkg, of string) bool { return pkg == of || strings.HasPrefix(pkg, of+"/") }

// The top level holds what it is meant to hold, and dot-files.
func TestTopLevel(t *testing.T) {
	want := []string{"DEVELOPERS.md", "README.md", "cmd", "go.mod", "go.sum", "model", "persist", "physics", "testdata", "tui"}
	list, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range list {
		if !strings.HasPrefix(e.Name(), ".") && e.Name() != "chargehand" { // a built binary is not kept
			got = append(got, e.Name())
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("the top level holds %v, want %v", got, want)
	}
}
