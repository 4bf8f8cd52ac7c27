package org.scrubline.signoff.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.TableSigning;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/** Signing on a device that had no network. An answer of 200 names the record, which is committed. */
@RestController
@RequestMapping("/sheets/{id}/signing")
class TableSigningController {

    private final Signing signing;
    private final Passkeys passkeys;
    private final RecordWords words;

    TableSigningController(Signing signing, Passkeys passkeys, RecordWords words) {
        this.signing = signing;
        this.passkeys = passkeys;
        this.words = words;
    }

    /**
     * What a device needs to sign a sheet.
     *
     * @param scrubline always "signing"
     * @param statement the members of what is signed that scoring does not change
     * @param keys the passkeys that may sign; null where the sheet cannot be signed on a device
     * @param signed the record the sheet has become
     */
    record Facts(
            String scrubline,
            UUID sheet,
            Map<String, Object> statement,
            Passkeys.@Nullable Ask keys,
            TableSigning.@Nullable Signed signed) {}

    /** What became of a signature; {@code record} is null where it led to none, and the reasons say why. */
    record Answer(
            String scrubline,
            @Nullable UUID sheet,
            @Nullable UUID record,
            List<String> reasons) {}

    @GetMapping
    Facts facts(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        TableSigning sheet = signing.atTheTable(who, id);
        Passkeys.Ask keys =
                sheet.possible() ? passkeys.askLater(who.accountId()).orElse(null) : null;
        return new Facts("signing", id, sheet.statement(), keys, sheet.signed());
    }

    @PostMapping
    ResponseEntity<Answer> sign(
            @AuthenticationPrincipal SignedIn who, @PathVariable UUID id, HttpServletRequest request)
            throws IOException {
        Optional<TableSignatureBody> body = TableSignatureBody.read(request.getInputStream());
        if (body.isEmpty()) {
            // Whoever may not know of the sheet learns nothing from this either.
            signing.atTheTable(who, id);
            return answer(HttpStatus.BAD_REQUEST, id, null, List.of(words.say("signoff.table.unreadable")));
        }
        // On a shared device somebody else may have logged in since: it waits there for the one who made it.
        if (!body.get().person().equals(who.personId().toString())) {
            return ResponseEntity.status(HttpStatus.FORBIDDEN).build();
        }
        try {
            return signing.signAtTheTable(who, id, body.get().signature())
                    .fold(
                            signed -> answer(HttpStatus.OK, id, signed.id(), List.of()),
                            reasons -> answer(HttpStatus.UNPROCESSABLE_CONTENT, id, null, said(reasons)));
        } catch (StaleData e) {
            return answer(HttpStatus.CONFLICT, id, null, List.of(words.say("signoff.table.stale")));
        }
    }

    private List<String> said(List<Refusal> reasons) {
        return reasons.stream().map(words::say).distinct().toList();
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    ResponseEntity<Answer> notFound() {
        return answer(HttpStatus.NOT_FOUND, null, null, List.of(words.say("signoff.table.gone")));
    }

    private static ResponseEntity<Answer> answer(
            HttpStatus status, @Nullable UUID sheet, @Nullable UUID record, List<String> reasons) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .body(new Answer("signed", sheet, record, reasons));
    }
}
