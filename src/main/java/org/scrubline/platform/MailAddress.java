package org.scrubline.platform;

import java.util.regex.Pattern;

/** What a mail address may look like here: plain, without names or comments around it. */
public final class MailAddress {

    /** RFC 5321, section 4.5.3.1.3, from memory: a path of 256 characters with its two brackets. */
    private static final int LONGEST = 254;

    private static final Pattern FORM = Pattern.compile("[\\w.+%-]+@[\\w-]+(?:\\.[\\w-]+)*");

    private MailAddress() {}

    /** Whether mail can be sent there, as far as that shows. */
    public static boolean fits(String text) {
        return text.length() <= LONGEST && FORM.matcher(text).matches();
    }
}
