package words

import "fmt"

// A smelt as a folder of tables.
const (
	FlagPackage = "write a `folder` of tables with a descriptor (Data Package 2.0) instead, which import takes back"

	PackageMeans = "One smelt in a small clay shaft furnace, in tables of CSV: what was keyed, the figures each minute, warnings, the account of the iron, lots and pieces. The table of entries has the record itself in its column line; all else follows from it. Temperatures, slag and iron in the furnace are reckoned, not read. Initials and notes stand as they were keyed."

	PackageEmpty    = "names no table"
	PackageNoFile   = "is not there, or is no ordinary file"
	PackageRowCount = "one has a row here that the other lacks"
	PackageOutTo    = "--package and --out exclude each other"
)

// PackageTitle names a package.
func PackageTitle(smelt string) string { return "Smelt " + smelt }

// BadPackage says what is wrong with a package, and that nothing was kept.
func BadPackage(file, what string) string {
	return fmt.Sprintf("%s: %s; nothing was kept: ask for the whole folder again", file, what)
}

// PackagePath refuses a path that leads out of the folder.
func PackagePath(path string) string {
	return fmt.Sprintf("%q leads out of the folder or is hidden", path)
}

// PackageNoColumn says that a table lacks a column.
func PackageNoColumn(name string) string { return fmt.Sprintf("has no column %q", name) }

// PackageRow says which row cannot be read.
func PackageRow(row int, err error) string { return fmt.Sprintf("row %d: %v", row, err) }

// PackageChanged says that a table was changed after it was written.
func PackageChanged(file string) string {
	return file + " was changed after the package was written"
}

// FolderNoPackage says that a folder holds no package.
func FolderNoPackage(folder, descriptor string) string {
	return folder + " is a folder without a " + descriptor + ": name a log in it, or the folder that export --package wrote"
}

// PackageLacks says that a table is not there.
func PackageLacks(file string) string { return file + " is missing" }

// PackageDiffers says in which row a table does not say what the entries do.
func PackageDiffers(file string, row int, what string) string {
	return fmt.Sprintf("%s, row %d: %s", file, row, what)
}

// PackageSolver says that the figures are of another version of the solver.
func PackageSolver(theirs, ours string) string {
	return fmt.Sprintf("its figures are of %q, this program has %q: they were not compared", theirs, ours)
}

// PackageDoubt is a doubt about a package that was taken in all the same.
func PackageDoubt(doubt string) string {
	return "doubtful: " + doubt + " (the smelt was taken from its entries)"
}

// FolderWritten says what was written.
func FolderWritten(folder string, files int) string {
	return fmt.Sprintf("%s: %d files written", folder, files)
}

// FolderExists refuses to write into a folder that is there.
func FolderExists(folder string) string {
	return folder + " is there already; name another, or say --replace to put this package in its place"
}

// NoPackageThere refuses to replace a folder that is no package.
func NoPackageThere(folder string) string {
	return folder + " is no package of this program: it is not replaced; name another folder"
}

// HouseBeside says what of the house came with a package.
func HouseBeside(kept, known int) string {
	return fmt.Sprintf("%s of the house came with it, %d were here already", EntriesOf(kept), known)
}
