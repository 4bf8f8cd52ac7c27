package org.scrubline.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Looks for a browser in the order: setting, usual places, the Debian package, Playwright's own download. */
final class ChromiumFinder {

    static final String NONE = "No Chromium found for the browser tests: install one (apt-get install chromium)"
            + " or give its path with -Dscrubline.test.chromium=/path/to/chromium";

    /** The one without a window of its own comes first: it needs half the time. */
    private static final List<String> USUAL_PLACES = List.of(
            "/usr/bin/chromium-headless-shell",
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome",
            "/usr/bin/google-chrome-stable",
            "/snap/bin/chromium",
            "/Applications/Chromium.app/Contents/MacOS/Chromium",
            "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
            "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
            "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
            "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe");

    private ChromiumFinder() {}

    /** A browser on this machine, installed from the distribution if that is possible without asking. */
    static Optional<Path> find() {
        String setting = System.getProperty("scrubline.test.chromium", "");
        if (!setting.isBlank()) {
            return Optional.of(chosen(setting));
        }
        return firstOf(USUAL_PLACES).or(ChromiumFinder::fromDebian);
    }

    /** The browser the setting names. */
    static Path chosen(String setting) {
        Path path = Path.of(setting);
        if (!Files.isExecutable(path)) {
            throw new IllegalStateException("scrubline.test.chromium=" + setting + " is not an executable file");
        }
        return path;
    }

    /** The first path that can be run. */
    static Optional<Path> firstOf(List<String> places) {
        return places.stream().map(Path::of).filter(Files::isExecutable).findFirst();
    }

    /** Fetches Playwright's own Chromium; after a minute, or on failure, says in one line what to do instead. */
    static void download() {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = List.of(
                java,
                "-cp",
                System.getProperty("java.class.path"),
                "com.microsoft.playwright.CLI",
                "install",
                "chromium");
        if (!run(command, 60)) {
            throw new IllegalStateException(NONE);
        }
    }

    private static Optional<Path> fromDebian() {
        boolean root = "root".equals(System.getProperty("user.name"));
        if (!root || !Files.exists(Path.of("/etc/debian_version"))) {
            return Optional.empty();
        }
        run(List.of("apt-get", "update"), 120);
        return Stream.of("chromium-headless-shell", "chromium")
                .filter(name -> run(List.of("apt-get", "install", "-y", "--no-install-recommends", name), 300))
                .findFirst()
                .flatMap(name -> firstOf(USUAL_PLACES));
    }

    /** True when the command ends well in time; it is stopped when it does not. */
    static boolean run(List<String> command, long seconds) {
        try {
            Process process = new ProcessBuilder(new ArrayList<>(command))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
                return false;
            }
            return process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
