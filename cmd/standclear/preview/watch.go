package preview

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"
)

// mostBytes is the largest file that is read.
const mostBytes = 16 << 20

// fresh is how long a file is read again at every look though its time and size stand: file systems count time in
// steps, of two seconds the longest.
const fresh = 3 * time.Second

// watch calls change with the content of the file, or why it cannot be read: at once, and whenever either is
// another than before, until ctx ends. It looks by name, so that a file renamed over it is seen.
func watch(ctx context.Context, name string, every time.Duration, change func(src []byte, err error)) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	var last fs.FileInfo
	var was []byte
	said := "" // the last error
	for first := true; ; first = false {
		src, st, err := look(name, last)
		switch {
		case errors.Is(err, errSame):
		case err != nil:
			last = nil
			if err.Error() != said {
				change(nil, err)
			}
			said = err.Error()
		default:
			last = st
			if first || said != "" || !bytes.Equal(src, was) {
				change(src, nil)
			}
			was, said = src, ""
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// errSame is that the file need not be read again.
var errSame = errors.New("unchanged")

// look reads the file unless it is the one that was read last.
func look(name string, last fs.FileInfo) ([]byte, fs.FileInfo, error) {
	st, err := os.Stat(name)
	if err != nil {
		return nil, nil, plain(err)
	}
	if last != nil && os.SameFile(st, last) && st.Size() == last.Size() && st.ModTime().Equal(last.ModTime()) && time.Since(st.ModTime()) > fresh {
		return nil, nil, errSame
	}
	src, err := ReadFile(name)
	return src, st, err
}

// ReadFile reads a project file that can be followed: a regular file of bearable size.
func ReadFile(name string) ([]byte, error) {
	st, err := os.Stat(name) // before it is opened: a pipe would wait there
	if err != nil {
		return nil, plain(err)
	}
	if !st.Mode().IsRegular() {
		return nil, errors.New("it is not a regular file")
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, plain(err)
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, mostBytes+1))
	if err != nil {
		return nil, plain(err)
	}
	if len(src) > mostBytes {
		return nil, fmt.Errorf("it is larger than %d MB", mostBytes>>20)
	}
	return src, nil
}

// plain leaves out the name, which stands before the message.
func plain(err error) error {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return p.Err
	}
	return err
}
