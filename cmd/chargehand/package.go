package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/invented"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/datapack"
)

// descriptor is the file by which a folder is known as a package.
const descriptor = "datapackage.json"

// exportPackage writes a smelt, and what of the house it leans on, as a folder of
// tables: whole under another name first, then renamed.
func exportPackage(w world, c common, name, folder string, replace bool) error {
	src, book, err := sourceOf(w, c, name)
	if err != nil {
		return err
	}
	files, err := datapack.Files(src, book)
	if err != nil {
		return err
	}
	if err := free(w, c, folder, replace); err != nil {
		return err
	}
	beside, err := os.MkdirTemp(filepath.Dir(filepath.Clean(folder)), filepath.Base(folder)+".*.part")
	if err != nil {
		return errors.New(words.CannotWrite(folder, err))
	}
	defer os.RemoveAll(beside) // gone already when all went well
	for file, text := range files {
		if err := os.WriteFile(filepath.Join(beside, file), text, 0o600); err != nil {
			return errors.New(words.CannotWrite(folder, err))
		}
	}
	if replace {
		if err := os.RemoveAll(folder); err != nil {
			return errors.New(words.CannotWrite(folder, err))
		}
	}
	if err := os.Rename(beside, folder); err != nil {
		return errors.New(words.CannotWrite(folder, err))
	}
	_, err = fmt.Fprintln(w.out, words.FolderWritten(folder, len(files)))
	return err
}

// sourceOf gives the stored lines of a smelt and of the house that it leans on.
func sourceOf(w world, c common, name string) (src datapack.Source, book string, err error) {
	if demo, err := invented.Smelt(); err == nil && len(demo) > 0 && demo[0].Stream == name { // it stands in no book
		lines, err := persist.LinesOf(demo)
		return datapack.Source{Stream: name, Lines: lines}, "", err
	}
	r, err := reader(w, c)
	if err != nil {
		return src, "", err
	}
	defer tellFaults(w, r)
	stream, err := match(r, name)
	if err != nil {
		return src, "", err
	}
	smelt, err := r.Read(stream)
	if err != nil {
		return src, "", err
	}
	src.Stream, src.Lines = stream, smelt.Lines
	es, err := smelt.Entries(stream)
	if err != nil {
		return src, "", err
	}
	streams, err := r.Streams()
	if err != nil {
		return src, "", err
	}
	if slices.Contains(streams, entry.House) {
		house, err := r.Read(entry.House)
		if err != nil {
			return src, "", err
		}
		src.House = datapack.Leaning(session.Open(stream, es), house.Lines)
	}
	return src, r.UID(), nil
}

// free tells whether a folder may be written: there is none of that name, or one that
// holds nothing but a package and is to be replaced.
func free(w world, c common, folder string, replace bool) error {
	book, err := bookPath(c, w.getenv)
	if err != nil {
		return err
	}
	if persist.Owns(book, folder) || persist.Owns(book, filepath.Join(folder, descriptor)) {
		return errors.New(words.OwnFile(folder))
	}
	files, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case !replace:
		return errors.New(words.FolderExists(folder))
	case err != nil:
		return errors.New(words.CannotWrite(folder, err))
	}
	for _, f := range files {
		if ext := filepath.Ext(f.Name()); !f.Type().IsRegular() || ext != ".csv" && f.Name() != descriptor && f.Name() != "README.md" {
			return errors.New(words.NoPackageThere(folder))
		}
	}
	if len(files) > 0 && !slices.ContainsFunc(files, func(f fs.DirEntry) bool { return f.Name() == descriptor }) {
		return errors.New(words.NoPackageThere(folder))
	}
	return nil
}

// takePackage keeps the smelt of a package, and what of the house came with it and is
// not here. Doubts about its other tables are told, and change nothing.
func takePackage(w world, book *persist.Book, folder string) (id string, n int, err error) {
	p, err := datapack.Read(os.DirFS(folder))
	if err != nil {
		return "", 0, err
	}
	for _, doubt := range p.Doubts {
		fmt.Fprintln(w.err, "chargehand:", words.OneLine(words.PackageDoubt(doubt)))
	}
	if err := book.ImportJSON(p.Journal); err != nil {
		return "", 0, err
	}
	var here []entry.Entry
	if streams, err := book.Streams(); err != nil {
		return "", 0, err
	} else if slices.Contains(streams, entry.House) {
		if here, err = book.Entries(entry.House); err != nil {
			return "", 0, err
		}
	}
	beside := housed(p, here, book.UID())
	book.Keep(beside...)
	if len(p.House) > 0 {
		fmt.Fprintln(w.err, words.HouseBeside(len(beside), len(house.InForce(p.House))-len(beside)))
	}
	return p.Journal.Stream, len(p.Journal.Lines), nil
}

// housed are the entries of a package's house that are not here yet, in force as they
// were there, each with where it stood.
func housed(p datapack.Package, here []entry.Entry, uid string) []entry.Entry {
	if p.Book == uid {
		return nil
	}
	known := house.InForce(here)
	var all []entry.Entry
	for _, e := range house.InForce(p.House) {
		from := entry.Origin{Book: p.Book, Seq: e.Seq}
		if slices.ContainsFunc(known, func(k entry.Entry) bool {
			return k.From == from && from.Book != "" || k.Happened.Equal(e.Happened) && reflect.DeepEqual(k.Event, e.Event)
		}) {
			continue
		}
		all = append(all, entry.Entry{Stream: entry.House, Happened: e.Happened, By: e.By, From: from, Event: e.Event})
	}
	return all
}
