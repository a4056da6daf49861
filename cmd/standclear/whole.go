package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// carryMost is how many files that are not of the set a folder may hold to be exchanged as a whole.
const carryMost = 2000

// putWhole puts stage in the place of dir in one step, with all that dir holds besides the files. put is false where
// that cannot be done and dir is as it was: the program stands in dir, dir is a mount or may not be written, the
// system has no exchange of folders.
func putWhole(stage, dir string, files []file) (put bool, err error) {
	st, err := os.Lstat(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return os.Rename(stage, dir) == nil, nil
	}
	if err != nil || standsIn(dir) || !writable(dir) {
		return false, nil
	}
	own := map[string]bool{}
	for _, f := range files {
		own[filepath.FromSlash(f.name)] = true
	}
	if carry(stage, dir, own) != nil || likeFolder(stage, st) != nil || exchange(stage, dir) != nil {
		return false, nil
	}
	return true, late(stage, dir, own)
}

// standsIn tells whether the program was started in dir or below: its shell would be left in a folder that is gone.
func standsIn(dir string) bool {
	at, err := os.Getwd()
	if err == nil {
		at, err = filepath.EvalSymlinks(at)
	}
	if err != nil {
		return true
	}
	rel, err := filepath.Rel(dir, at)
	return err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator))
}

// carry links all that dir holds into stage, but what is own.
func carry(stage, dir string, own map[string]bool) error {
	n := 0
	return others(dir, own, func(rel string, d fs.DirEntry) error {
		if n++; n > carryMost {
			return fmt.Errorf("more than %d files that are not of the set", carryMost)
		}
		from, to := filepath.Join(dir, rel), filepath.Join(stage, rel)
		switch {
		case d.IsDir():
			st, err := d.Info()
			if err != nil {
				return err
			}
			if err := os.MkdirAll(to, 0o777); err != nil {
				return err
			}
			return likeFolder(to, st)
		case d.Type()&fs.ModeSymlink != 0:
			t, err := os.Readlink(from)
			if err != nil {
				return err
			}
			return os.Symlink(t, to)
		case d.Type() != 0:
			return fmt.Errorf("%s is neither a file nor a folder", from)
		}
		return os.Link(from, to)
	})
}

// late moves what someone else wrote into the old folder while it was exchanged into the new one.
func late(old, dir string, own map[string]bool) error {
	return others(old, own, func(rel string, d fs.DirEntry) error {
		from, to := filepath.Join(old, rel), filepath.Join(dir, rel)
		if d.IsDir() {
			return os.MkdirAll(to, 0o777)
		}
		a, err := os.Lstat(from)
		if err != nil {
			return err
		}
		if b, err := os.Lstat(to); err == nil && (os.SameFile(a, b) || d.Type()&fs.ModeSymlink != 0) {
			return nil
		}
		return os.Rename(from, to)
	})
}

// others walks what a folder holds that is not own, each folder before what is in it.
func others(dir string, own map[string]bool, do func(rel string, d fs.DirEntry) error) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		if err != nil || rel == "." || own[rel] {
			return err
		}
		return do(rel, d)
	})
}
