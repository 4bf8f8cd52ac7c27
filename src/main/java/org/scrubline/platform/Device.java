package org.scrubline.platform;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A kind of device, as far as a browser says it of itself: enough for its owner to recognise it. Made of the marks browsers
 * put into their names (common practice, no source); what is not recognised is OTHER.
 */
public record Device(Browser browser, Platform system) {

    /** In the order of looking: most browsers also carry the marks of those below. */
    public enum Browser {
        EDGE("Edg"),
        OPERA("OPR/"),
        SAMSUNG("SamsungBrowser"),
        FIREFOX("Firefox/|FxiOS"),
        CHROME("Chrome/|CriOS|Chromium/"),
        SAFARI("Safari/"),
        OTHER("");

        /** A pattern. */
        private final String marks;

        Browser(String marks) {
            this.marks = marks;
        }
    }

    /** In the order of looking. */
    public enum Platform {
        PHONE_OR_TABLET_IOS("iPhone|iPad"),
        PHONE_OR_TABLET_ANDROID("Android"),
        WINDOWS("Windows"),
        MAC("Macintosh"),
        CHROME_OS("CrOS"),
        LINUX("Linux|X11"),
        OTHER("");

        /** A pattern. */
        private final String marks;

        Platform(String marks) {
            this.marks = marks;
        }
    }

    /** The kind of device behind a user agent; nothing is recognised where none was sent. */
    public static Device of(@Nullable String userAgent) {
        String agent = userAgent == null ? "" : userAgent;
        return new Device(
                Arrays.stream(Browser.values())
                        .filter(browser -> carries(agent, browser.marks))
                        .findFirst()
                        .orElseThrow(),
                Arrays.stream(Platform.values())
                        .filter(system -> carries(agent, system.marks))
                        .findFirst()
                        .orElseThrow());
    }

    private static boolean carries(String agent, String marks) {
        return Pattern.compile(marks).matcher(agent).find();
    }

    /** As {@link #text} wrote it; empty for what this release does not know. */
    public static Optional<Device> parse(String text) {
        return Arrays.stream(Browser.values())
                .flatMap(browser -> Arrays.stream(Platform.values()).map(system -> new Device(browser, system)))
                .filter(device -> device.text().equals(text))
                .findFirst();
    }

    /** Such as {@code FIREFOX/WINDOWS}. */
    public String text() {
        return browser + "/" + system;
    }
}
