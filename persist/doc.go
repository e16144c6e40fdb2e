// Package persist keeps the journal: a bbolt file (the book) and, beside it, a
// plain-text twin of every stream.
//
// An entry is called kept only when the commit of the book and the append to
// the twin are both flushed. One goroutine writes; everything that is queued
// goes into one transaction; acknowledgements come in the order of Keep.
//
// Every stored line names the SHA-256 of the line before it in its stream, and
// the record of the stream in the book names the last one, so that a missing or
// changed line is seen. Either of book and twin is enough to rebuild the other:
// opening compares them and the longer whole chain wins. Nothing that was kept
// is deleted; what has to give way is set aside under another name.
//
// Readers hold no lock. While the running program has the book, they read the
// twins.
//
// A file whose flush has failed is not written again. A twin is written anew; the
// book is set aside, and a new one with the streams in use takes its place; entries are
// called kept once both are flushed. The other streams come into it in pauses.
//
// A file that was removed, renamed or replaced takes writes and flushes as
// before, but nobody would find them. So the paths are followed after each flush:
// a lost twin is written anew from the book, a new book takes the place of a lost one
// in a folder made anew, and what only the open file still holds is brought over in
// pauses and at closing. Another book that came to stand there is left alone;
// until it goes, entries are said not to be kept.
//
// The file of the book is boltfile's, the text of the twins twin's. Check looks
// through both and changes nothing; Rescue makes the book anew from both.
package persist
