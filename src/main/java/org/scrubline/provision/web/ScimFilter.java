package org.scrubline.provision.web;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scrubline.platform.FreeText;
import org.scrubline.provision.UserFilter;

/** The filters a directory needs to find its people (RFC 7644, section 3.4.2.2): one attribute, {@code eq}. */
final class ScimFilter {

    private static final int LONGEST = 600;
    private static final Pattern EQUALS = Pattern.compile(
            "\\s*+(userName|externalId)\\s++eq\\s++\"((?:[^\"\\\\]|\\\\[\"\\\\/])*+)\"\\s*+", Pattern.CASE_INSENSITIVE);

    private ScimFilter() {}

    static UserFilter read(String filter) {
        if (filter.isBlank()) {
            return UserFilter.NONE;
        }
        Matcher equals = EQUALS.matcher(filter);
        if (filter.length() > LONGEST || FreeText.hasForbiddenCharacter(filter) || !equals.matches()) {
            throw ScimError.invalid("invalidFilter", "A filter is: userName eq \"...\" or externalId eq \"...\".");
        }
        String value = equals.group(2).replaceAll("\\\\(.)", "$1");
        return equals.group(1).toLowerCase(Locale.ROOT).equals("username")
                ? new UserFilter(value, null)
                : new UserFilter(null, value);
    }
}
