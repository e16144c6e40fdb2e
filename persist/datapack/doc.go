// Package datapack writes a smelt as a data package: a folder of tables in CSV with a
// descriptor that says what each column is, in which unit, and how the tables hang
// together (Data Package 2.0, https://datapackage.org, of 26 June 2024; the text is in
// the public domain). Whoever has no copy of this program can read it.
//
// Read takes a smelt back from such a folder: from the column line of the table of
// entries alone, which holds the stored bytes. All other tables follow from them and
// are compared with what follows from them here; where they differ that is a doubt,
// named by table and row, and no more.
package datapack
