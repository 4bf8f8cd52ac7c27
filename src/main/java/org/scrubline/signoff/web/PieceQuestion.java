package org.scrubline.signoff.web;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.PieceCount;
import org.scrubline.casework.Sheet;

/**
 * Whether all sponge pieces are out, asked before a signature.
 *
 * @param sheet id of the sheet
 * @param version its lock version
 * @param said what is written down so far, in words
 * @param inField name of the field that counts them in
 * @param outField name of the field that counts them out
 */
record PieceQuestion(
        UUID sheet,
        int version,
        String said,
        String inField,
        @Nullable String in,
        String outField,
        @Nullable String out) {

    static PieceQuestion of(Sheet sheet, PieceCount count, RecordWords words) {
        String missing = words.say("signoff.pieces.missing");
        @Nullable String in = text(count.in());
        @Nullable String out = text(count.out());
        return new PieceQuestion(
                sheet.id(),
                sheet.lockVersion(),
                words.say(
                        count.differs() ? "signoff.pieces.differ" : "signoff.pieces.unfilled",
                        in == null ? missing : in,
                        out == null ? missing : out),
                "measure." + count.inStep().code() + "." + count.inCode(),
                in,
                "measure." + count.outStep().code() + "." + count.outCode(),
                out);
    }

    private static @Nullable String text(@Nullable BigDecimal number) {
        return number == null ? null : number.toPlainString();
    }
}
