// Package boltfile is the bbolt file of a book: its buckets, and all that knows
// bbolt's own bytes.
//
// bbolt trusts the pages of its file and maps them. They are walked before it
// follows them, those of a large book in part later; a fault of memory is an
// error, after which the file is neither read nor written any more.
package boltfile
