//! Writing: to the terminal through one door, to files whole or not at all.

use super::Exit;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Something that could not be written.
#[derive(Debug)]
pub struct WriteError {
    /// What was to be written.
    pub what: String,
    /// Why it could not.
    pub error: io::Error,
}

/// Prints a text to standard output. A reader that has gone away is no fault.
pub fn print(text: &str) -> Result<(), WriteError> {
    let mut out = io::BufWriter::new(anstream::stdout().lock());
    let done = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    match done {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(WriteError { what: "standard output".to_owned(), error })
        }
        _ => Ok(()),
    }
}

/// Prints a text to standard error; where that fails there is nobody to tell.
pub fn warn(text: &str) {
    let _ = anstream::stderr().lock().write_all(text.as_bytes());
}

/// Says that writing failed.
pub fn complain(error: &WriteError) -> Exit {
    warn(&format!("error: cannot write {}: {}\n", error.what, error.error));
    Exit::Failed
}

/// The files of a folder that are there already.
pub fn in_the_way<'n>(folder: &Path, names: &[&'n str]) -> Vec<&'n str> {
    names.iter().copied().filter(|n| folder.join(n).symlink_metadata().is_ok()).collect()
}

/// Writes several files into a folder: all of them are written out beside their places first, then each is moved there.
pub fn write_all(
    folder: &Path,
    files: &[(impl AsRef<Path>, impl AsRef<[u8]>)],
) -> Result<(), WriteError> {
    let fail = |what: &Path| {
        let what = what.display().to_string();
        move |error| WriteError { what, error }
    };
    fs::create_dir_all(folder).map_err(fail(folder))?;
    let mut ready = Vec::new();
    for (name, bytes) in files {
        let path = target(&folder.join(name));
        let file = beside(&path, bytes.as_ref()).map_err(fail(&path))?;
        ready.push((path, file));
    }
    for (path, file) in ready {
        file.persist(&path)
            .map_err(|e| WriteError { what: path.display().to_string(), error: e.error })?;
    }
    Ok(())
}

/// Where a link leads, so that the file behind it is replaced and not the link.
fn target(path: &Path) -> PathBuf {
    fs::canonicalize(path).unwrap_or_else(|_| path.to_owned())
}

fn beside(path: &Path, bytes: &[u8]) -> io::Result<tempfile::NamedTempFile> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let mut file = ordinary(tempfile::Builder::new().prefix(".toolberth-")).tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    if let Ok(old) = fs::metadata(path) {
        file.as_file().set_permissions(old.permissions())?;
    }
    Ok(file)
}

/// New files get the rights that any program's new files get, not those of a secret.
#[cfg(unix)]
fn ordinary<'a, 'b>(
    builder: &'a mut tempfile::Builder<'b, 'b>,
) -> &'a mut tempfile::Builder<'b, 'b> {
    use std::os::unix::fs::PermissionsExt;
    builder.permissions(fs::Permissions::from_mode(0o666))
}

#[cfg(not(unix))]
fn ordinary<'a, 'b>(
    builder: &'a mut tempfile::Builder<'b, 'b>,
) -> &'a mut tempfile::Builder<'b, 'b> {
    builder
}
