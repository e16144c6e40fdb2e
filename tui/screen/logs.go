package screen

import (
	"time"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/shelf"
)

// LogFiles are the logs of other people on this machine, as a screen finds and opens them,
// inside a Run alone.
type LogFiles interface {
	Folder(path string) (Folder, error) // that of the program's start for ""
	Open(path string) (Sheet, error)
}

// Folder is what of a folder can be gone to or opened.
type Folder struct {
	Path, Above string // Above is "" where there is none
	Files       []LogFile
}

// LogFile is a file that may be a log, or a folder.
type LogFile struct {
	Name, Path string
	Folder     bool
	Bytes      int64
	Changed    time.Time
}

// Sheet is a file as it was opened: what is shown of it is what will be kept, whatever
// becomes of the file meanwhile. Read and Take are called inside a Run alone.
type Sheet struct {
	Name         string
	Heads        []string
	Rows         [][]string // the first
	DecimalComma bool
	Read         func(entry.Mapping) LogRead
	Take         func(entry.Mapping, TakenAs) (smelt string, entries int, err error)
}

// LogRead is what comes of a sheet by a mapping, before anything is kept.
type LogRead struct {
	Table columns.Table
	Smelt shelf.Summary
	Err   error // why nothing of it can be kept
}

// TakenAs says what a log lacks.
type TakenAs struct {
	Furnace  string          // "" for not known
	Day      time.Time       // of its first row, where no column is the day; zero for not known
	Begin    int             // minutes of the day at the nought of a clock that counts from the start
	Measures []entry.Measure // what a bucket, a scoop holds
}
