//! Runs the program as a process in folders of its own.

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tempfile::TempDir;

/// A cart with two bays, a drawer, a panel and a bench.
pub const CARCASS: &str = "\
name: test cart
units: mm
size: {width: 1000, depth: 560, height: 880}
mass: 36 kg
casters: {height: 110, rating: 60 kg, locks: 4, at: [[55, 55], [945, 55], [55, 505], [945, 505]]}
faces:
  front:
    bays:
      - name: upper left
        at: [15, 500]
        opening: [460, 350]
        depth: 260
        limit: 25 kg
        shelves: [{height: 170, depth: 200, thickness: 15, limit: 15 kg}]
        hang: {left: 5 kg}
      - {name: lower left, at: [15, 130], opening: [460, 340], depth: through}
    drawers:
      - {name: fixings, at: [510, 130], opening: [460, 90], depth: 400, limit: 12 kg, mass: 4 kg}
  back:
    bays:
      - {name: upper rear, behind: upper left, gap: 15}
    panels:
      - {name: rail, at: [30, 200], size: [460, 280], room: 120, limit: 10 kg}
  top: {keep_clear: 70%}
";

/// Nine things that all find a place.
pub const INVENTORY: &str = "\
items:
  - {name: soldering station, size: [160, 190, 130], weight: 2.6 kg, use: 3 per week, hazards: [hot, ignition, electric]}
  - {name: solder reel, size: [60, 60, 70], weight: 0.5 kg, use: 3 per week, with: [soldering station], family: soldering}
  - {name: flux, size: [40, 40, 60], weight: 0.1 kg, use: weekly, hazards: [liquid], family: soldering}
  - {name: try square, size: [180, 20, 120], weight: 0.4 kg, use: daily, keep: {hang: true, lie: true}}
  - {name: mallet, size: [300, 110, 90], weight: 0.9 kg, use: weekly}
  - {name: case of screws, size: [240, 180, 50], weight: 2 kg, use: twice a month, count: 2, stack: 2}
  - {name: clamp, size: [300, 60, 120], weight: 1.1 kg, use: monthly, count: 3, pitch: 20, keep: {hang: true}}
  - {name: block plane, size: [170, 60, 70], weight: 0.8 kg, use: daily, hazards: [sharp], guarded: true}
  - {name: hand vice, size: [120, 50, 60], weight: 0.7 kg, use: yearly}
";

/// What a run of the program gave.
pub struct Run {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Run {
    /// The one JSON document on stdout, and nothing else there.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out)
            .unwrap_or_else(|e| panic!("{e}\n{}\n{}", self.out, self.err))
    }
    /// Fails unless it ended so.
    pub fn ends(self, code: i32) -> Run {
        assert_eq!(self.code, code, "stdout:\n{}\nstderr:\n{}", self.out, self.err);
        self
    }
    /// Fails unless it ended in one of these ways.
    pub fn ends_in(self, codes: &[i32]) -> Run {
        let all = format!("stdout:\n{}\nstderr:\n{}", self.out, self.err);
        assert!(codes.contains(&self.code), "exit code {}\n{all}", self.code);
        self
    }
}

/// The program with these arguments, nothing on its stdin, no settings from outside.
pub fn program(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_toolberth"));
    command.args(arguments).stdin(Stdio::null());
    for name in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "COLUMNS", "RUST_BACKTRACE"] {
        command.env_remove(name);
    }
    command
}

/// Runs it to its end. It never panics.
pub fn run(arguments: &[&str]) -> Run {
    let output = program(arguments).output().expect("the program starts");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("what it prints is UTF-8");
    let (out, err) = (text(output.stdout), text(output.stderr));
    let code = output.status.code().expect("it ends by itself");
    assert!(!err.contains("panicked"), "{err}");
    Run { code, out, err }
}

/// A workspace in a folder that goes with it.
pub struct Folder(TempDir);

impl Folder {
    /// An empty one.
    pub fn empty() -> Folder {
        Folder(tempfile::tempdir().expect("a folder can be made"))
    }
    /// One with these files.
    pub fn with(carcass: &str, inventory: &str) -> Folder {
        let folder = Folder::empty();
        folder.write("carcass.yaml", carcass);
        folder.write("inventory.yaml", inventory);
        folder
    }
    /// The good one.
    pub fn good() -> Folder {
        Folder::with(CARCASS, INVENTORY)
    }
    pub fn path(&self) -> &Path {
        self.0.path()
    }
    pub fn file(&self, name: &str) -> PathBuf {
        self.path().join(name)
    }
    pub fn write(&self, name: &str, text: impl AsRef<[u8]>) {
        fs::write(self.file(name), text).expect("a file can be written");
    }
    pub fn read(&self, name: &str) -> String {
        fs::read_to_string(self.file(name)).unwrap_or_else(|e| panic!("{name}: {e}"))
    }
    pub fn name(&self) -> &str {
        self.path().to_str().expect("a plain path")
    }
    /// Runs a command on it.
    pub fn run(&self, command: &str, flags: &[&str]) -> Run {
        run(&[&[command, self.name()], flags].concat())
    }
    /// A quick plan of it.
    pub fn plan(&self, flags: &[&str]) -> Run {
        self.run("plan", &[&["--effort", "quick"], flags].concat())
    }
}
