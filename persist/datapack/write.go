package datapack

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"regexp"
	"strings"

	"chargehand/model/solve"
	"chargehand/model/words"
)

// descriptorFile is the one file of a package whose name is given by the standard.
const descriptorFile = "datapackage.json"

// readMe is the page of a package for a person.
const readMe = "README.md"

// descriptor is what datapackage.json holds. Properties beyond those of the standard
// are allowed; ours are unit, book, stream and solver.
type descriptor struct {
	Schema    string     `json:"$schema"`
	Name      string     `json:"name"`
	Title     string     `json:"title"`
	Means     string     `json:"description"`
	Stream    string     `json:"stream"`
	Book      string     `json:"book,omitempty"` // uid of the book that it is from
	Solver    string     `json:"solver"`
	Resources []resource `json:"resources"`
}

type resource struct {
	Name      string  `json:"name"`
	Type      string  `json:"type"`
	Title     string  `json:"title"`
	Means     string  `json:"description"`
	Path      string  `json:"path"`
	Format    string  `json:"format"`
	MediaType string  `json:"mediatype"`
	Encoding  string  `json:"encoding"`
	Dialect   dialect `json:"dialect"`
	Bytes     int     `json:"bytes"`
	Hash      string  `json:"hash"`
	Schema    schema  `json:"schema"`
}

// dialect says how the cells are parted, though it is the standard's default: readers that are not told guess it from
// the first lines, and a table full of sentences with commas makes them guess wrong.
type dialect struct {
	Delimiter string `json:"delimiter"`
}

type schema struct {
	Fields  []field   `json:"fields"`
	Key     []string  `json:"primaryKey,omitempty"`
	Foreign []foreign `json:"foreignKeys,omitempty"`
}

type field struct {
	Name        string          `json:"name"`
	Type        string          `json:"type"`
	Means       string          `json:"description,omitempty"`
	Unit        string          `json:"unit,omitempty"`
	Constraints map[string]bool `json:"constraints,omitempty"`
}

type foreign struct {
	Fields    []string  `json:"fields"`
	Reference reference `json:"reference"`
}

type reference struct {
	Resource string   `json:"resource,omitempty"`
	Fields   []string `json:"fields"`
}

// profile is the schema of a descriptor in the second version of the standard.
const profile = "https://datapackage.org/profiles/2.0/datapackage.json"

// notInName are the characters that a name of the standard should not have.
var notInName = regexp.MustCompile(`[^a-z0-9._-]+`)

// Files makes the files of a package by their names. The same source gives the same
// bytes; book is the uid of the book that it is from.
func Files(src Source, book string) (map[string][]byte, error) {
	all, err := tables(src)
	if err != nil {
		return nil, err
	}
	d := descriptor{
		Schema: profile, Name: "smelt-" + strings.Trim(notInName.ReplaceAllString(strings.ToLower(src.Stream), "-"), "-"), Title: words.PackageTitle(src.Stream),
		Means: words.PackageMeans, Stream: src.Stream, Book: book, Solver: solve.Version,
	}
	files := map[string][]byte{}
	for _, t := range all {
		text, err := t.CSV()
		if err != nil {
			return nil, err
		}
		files[t.File()] = text
		d.Resources = append(d.Resources, resourceOf(t, text))
	}
	text, err := json.MarshalIndent(d, "", "  ")
	if err != nil {
		return nil, err
	}
	files[descriptorFile] = append(text, '\n')
	files[readMe] = page(d, all)
	return files, nil
}

func resourceOf(t Table, text []byte) resource {
	sum := sha256.Sum256(text)
	r := resource{
		Name: strings.ReplaceAll(t.Name, "_", "-"), Type: "table", Title: t.Title, Means: t.Means, Path: t.File(), Format: "csv", MediaType: "text/csv", Dialect: dialect{Delimiter: ","},
		Encoding: "utf-8", Bytes: len(text), Hash: "sha256:" + hex.EncodeToString(sum[:]), Schema: schema{Key: t.Key},
	}
	for _, f := range t.Fields {
		one := field{Name: f.Name, Type: f.Type, Means: f.Means, Unit: f.Unit}
		if f.Unit != "" && f.Unit != "1" {
			one.Means += ", in " + f.Unit
		}
		if f.Required {
			one.Constraints = map[string]bool{"required": true}
		}
		r.Schema.Fields = append(r.Schema.Fields, one)
	}
	for _, k := range t.Foreign {
		r.Schema.Foreign = append(r.Schema.Foreign, foreign{k.Fields, reference{k.Resource, k.Of}})
	}
	return r
}

// page is the package for whoever opens the folder.
func page(d descriptor, all []Table) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# %s\n\n%s\n", d.Title, d.Means)
	for _, t := range all {
		fmt.Fprintf(&b, "\n## %s (%s)\n\n%s\n\n| column | unit | means |\n|---|---|---|\n", t.Title, t.File(), t.Means)
		for _, f := range t.Fields {
			fmt.Fprintf(&b, "| %s | %s | %s |\n", f.Name, f.Unit, f.Means)
		}
	}
	return b.Bytes()
}
