package org.scrubline.notice;

import java.time.LocalTime;

/**
 * How a person wants to be reminded.
 *
 * @param quietFrom local time from which on nothing comes
 * @param quietUntil local time until which nothing comes, on the next day if it is earlier; the same as {@code quietFrom}
 *     for no quiet hours
 * @param digestHour local hour, 0 to 23, from which on the mail of the day is sent
 * @param mailAddress empty when none was given
 */
public record NoticeSettings(
        LocalTime quietFrom, LocalTime quietUntil, int digestHour, boolean mailOn, String mailAddress) {

    /** Quiet from 20:00 to 7:00 and no mail: a default of this project. */
    public static final NoticeSettings DEFAULTS =
            new NoticeSettings(LocalTime.of(20, 0), LocalTime.of(7, 0), 7, false, "");

    /** Whether nothing may come at this local time. */
    boolean quietAt(LocalTime time) {
        if (quietFrom.equals(quietUntil)) {
            return false;
        }
        boolean begun = !time.isBefore(quietFrom);
        boolean over = !time.isBefore(quietUntil);
        return quietFrom.isBefore(quietUntil) ? begun && !over : begun || !over;
    }
}
