package org.scrubline.signoff.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Refusal;

/**
 * Why a sheet cannot be signed now.
 *
 * @param href where on the sheet to mend it, null when no entry can
 */
record Obstacle(String text, @Nullable String href) {

    static Obstacle of(Refusal reason, UUID sheetId, RecordWords words) {
        boolean onTheSheet = reason.field().equals("role") || reason.field().startsWith("step-");
        String place = reason.field().equals("role") ? "role-title" : reason.field();
        return new Obstacle(words.say(reason), onTheSheet ? "/sheets/" + sheetId + "#" + place : null);
    }
}
