package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"standclear/detail/keyfile"
	"strings"
)

// writeAll puts the files into dir: all of them into a folder beside it first, then that folder in the place of dir,
// so that dir holds the new set or what it held before, whenever the program ends. Two runs into one dir take turns.
func writeAll(dir string, files []file) (err error) {
	if st, e := os.Stat(dir); e == nil && !st.IsDir() {
		return fmt.Errorf("%s is a file; --out needs a folder", dir)
	}
	for _, f := range files {
		if st, e := os.Lstat(filepath.Join(dir, f.name)); e == nil && st.IsDir() {
			return fmt.Errorf("%s is a folder; a file of that name is to be written", filepath.Join(dir, f.name))
		}
	}
	if real, e := filepath.EvalSymlinks(dir); e == nil {
		dir = real // a link to the folder stays
	}
	if dir, err = filepath.Abs(dir); err != nil {
		return err
	}
	parent := filepath.Dir(dir)
	if e := os.MkdirAll(parent, 0o777); e != nil {
		return e
	}
	unlock, alone := lockFolder(parent)
	defer unlock()
	if alone {
		clearStages(parent)
	}
	aside, err := os.MkdirTemp(parent, stagePrefix)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(aside)) }()
	stage := filepath.Join(aside, "set")
	if err := os.Mkdir(stage, 0o777); err != nil {
		return err
	}
	for _, f := range files {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(stage, f.name)), 0o777); err != nil {
			return err
		}
		if err := writeFile(filepath.Join(stage, f.name), f.data); err != nil {
			return err
		}
	}
	if put, err := putWhole(stage, dir, files); put || err != nil {
		return err
	}
	for _, f := range files {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, f.name)), 0o777); err != nil {
			return err
		}
	}
	return swap(stage, dir, files)
}

// stagePrefix begins the name of the folder a set is written into first.
const stagePrefix = ".standclear-new-"

// clearStages removes what runs that were killed have left; its caller holds the lock of the folder.
func clearStages(parent string) {
	all, _ := os.ReadDir(parent)
	for _, d := range all {
		if d.IsDir() && strings.HasPrefix(d.Name(), stagePrefix) {
			os.RemoveAll(filepath.Join(parent, d.Name())) // what stays does no harm
		}
	}
}

// swap renames the staged files into dir one by one, keeping what they replace until all are there: the way where
// folders cannot be exchanged. A kill midway leaves files of both sets.
func swap(stage, dir string, files []file) error {
	var undo []func() error
	for _, f := range files {
		at, was := filepath.Join(dir, f.name), filepath.Join(stage, f.name+".was")
		held := os.Rename(at, was) == nil
		err := os.Rename(filepath.Join(stage, f.name), at)
		if err == nil {
			undo = append(undo, func() error {
				if held {
					return os.Rename(was, at)
				}
				return os.Remove(at)
			})
			continue
		}
		if held {
			err = errors.Join(err, os.Rename(was, at))
		}
		for i := len(undo) - 1; i >= 0; i-- {
			err = errors.Join(err, undo[i]())
		}
		return err
	}
	return nil
}

// leftOver lists drawings of these sheets in dir that were not written now: they show an earlier state.
func leftOver(dir string, ids []string, files []file) (out []string) {
	now := map[string]bool{}
	for _, f := range files {
		now[f.name] = true
	}
	names := []string{"set.pdf", "set.dxf", changesFile}
	for _, id := range ids {
		names = append(names, id+".svg", id+".dxf")
	}
	details, _ := os.ReadDir(filepath.Join(dir, "details")) // none when it is not there
	for _, d := range details {
		if slices.ContainsFunc(ids, func(id string) bool { return strings.HasPrefix(d.Name(), id+"-") }) {
			names = append(names, "details/"+d.Name())
		}
	}
	for _, n := range names {
		if _, err := os.Lstat(filepath.Join(dir, n)); err == nil && !now[n] {
			out = append(out, n)
		}
	}
	return out
}

// leftOverLine warns of them; "" when there are none.
func leftOverLine(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return "WARNING: from an earlier drawing, not of this state, are: " + strings.Join(names, " ") + "\n"
}

func writeFile(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	if _, err := f.Write(data); err != nil {
		return errors.Join(err, f.Close())
	}
	return f.Close()
}

// createFile writes a file that is not there yet, beside its place first: it is there whole or not at all.
func createFile(name string, data []byte) (err error) {
	defer func() {
		if p := (*fs.PathError)(nil); errors.As(err, &p) {
			p.Path = name // not the one beside it
		}
	}()
	if _, err := os.Lstat(name); err == nil {
		return fs.ErrExist
	}
	aside, err := os.MkdirTemp(filepath.Dir(name), ".standclear-file-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(aside)
	whole := filepath.Join(aside, "whole")
	if err := writeFile(whole, data); err != nil {
		return err
	}
	if err := os.Link(whole, name); err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return os.Rename(whole, name) // where files have one name alone
}

// replaceFile writes a file beside its place and renames it; what was there stays until then. A link stays and leads
// to the new file; a device or a pipe is written into.
func replaceFile(name string, data []byte) error {
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	}
	mode := os.FileMode(0o644)
	switch st, err := os.Stat(name); {
	case err != nil: // a new one
	case st.IsDir():
		return fmt.Errorf("%s is a folder; a file is to be written", name)
	case !st.Mode().IsRegular():
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		if err != nil {
			return err
		}
		_, err = f.Write(data)
		return errors.Join(err, f.Close())
	default:
		mode = st.Mode().Perm()
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".standclear-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Chmod(mode), f.Close()); err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return err
}

// rewriteFile replaces a file that still holds what was read from it: what someone saved in the meantime stays.
func rewriteFile(name string, was, now []byte) error {
	held, err := readFile(name)
	if err != nil {
		return err
	}
	if !bytes.Equal(held, was) {
		return fmt.Errorf("%s was changed by someone else since it was read, and was left as it is; start again", keyfile.Printed(name))
	}
	return replaceFile(name, now)
}
