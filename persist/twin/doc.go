// Package twin keeps the plain text of a book's streams, a file of JSON lines
// for each, and the chain that links a line to the one before it. A twin holds
// the same bytes as the book and is enough to rebuild it.
package twin
