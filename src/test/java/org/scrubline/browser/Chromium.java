package org.scrubline.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The one headless browser of a test run. Started on first use, closed when the JVM ends. */
public final class Chromium {

    private static final List<String> ARGUMENTS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            // Pages of the browser's own window, which nobody sees here; each context would start one.
            "--disable-features=PreloadTopChromeWebUI,TopChromeWebUIUsesSpareRenderer",
            "--disable-component-update",
            "--disable-sync");

    private static @Nullable Browser browser;

    private Chromium() {}

    /**
     * The shared browser; open a new context for each test and close it.
     *
     * @throws IllegalStateException when no browser can be had; the message says how to set one
     */
    public static synchronized Browser browser() {
        if (browser == null) {
            browser = start();
        }
        return browser;
    }

    /** A browser of its own whose profile outlives it; whoever starts it closes it. */
    public static BrowserContext persistent(Path profile) {
        BrowserType.LaunchPersistentContextOptions options = new BrowserType.LaunchPersistentContextOptions()
                .setArgs(ARGUMENTS)
                .setHeadless(true)
                .setViewportSize(360, 640);
        ChromiumFinder.find().ifPresent(options::setExecutablePath);
        return browser().browserType().launchPersistentContext(profile, options);
    }

    private static Browser start() {
        Optional<Path> executable = ChromiumFinder.find();
        Map<String, String> environment =
                executable.isPresent() ? Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1") : Map.of();
        if (executable.isEmpty()) {
            ChromiumFinder.download();
        }
        Playwright playwright = Playwright.create(new Playwright.CreateOptions().setEnv(environment));
        Runtime.getRuntime().addShutdownHook(new Thread(playwright::close, "close-chromium"));
        BrowserType.LaunchOptions options = new BrowserType.LaunchOptions().setArgs(ARGUMENTS);
        executable.ifPresent(options::setExecutablePath);
        return playwright.chromium().launch(options);
    }
}
