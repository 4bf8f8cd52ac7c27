package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseEntry;
import org.scrubline.casework.CaseReceipt;
import org.scrubline.casework.Cases;
import org.scrubline.casework.DeviceCases;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/** Takes the cases trainees kept on a device. An answer of 200 means that what it says is committed. */
@RestController
class CaseIntakeController {

    private static final String MARK = "case";

    private final DeviceCases intake;
    private final Cases cases;
    private final People people;
    private final Wording wording;

    CaseIntakeController(DeviceCases intake, Cases cases, People people, Wording wording) {
        this.intake = intake;
        this.cases = cases;
        this.people = people;
        this.wording = wording;
    }

    /**
     * What became of a case just sent.
     *
     * @param submission null when none could be read
     * @param received null when it was refused
     * @param reasons why it was refused, in the order of the form
     */
    record Answer(
            String scrubline,
            @Nullable UUID submission,
            @Nullable CaseReceipt received,
            List<Wording.FormError> reasons) {}

    /** Everything the server has under an id. */
    record Receipt(String scrubline, UUID submission, List<CaseReceipt> contents) {}

    @PostMapping("/at-the-table/cases")
    ResponseEntity<Object> enter(@AuthenticationPrincipal SignedIn who, HttpServletRequest request) throws IOException {
        Optional<CaseBody> body = CaseBody.read(request.getInputStream());
        if (body.isEmpty()) {
            return refused(HttpStatus.BAD_REQUEST, null, List.of(Refusal.of("case.log.unreadable")));
        }
        // On a shared device somebody else may have logged in since: the case waits there for the one who kept it.
        return body.get().person().equals(who.personId().toString())
                ? enter(who, body.get())
                : ResponseEntity.status(HttpStatus.FORBIDDEN).build();
    }

    private ResponseEntity<Object> enter(SignedIn who, CaseBody body) {
        UUID id = body.submission().id();
        Optional<CaseReceipt> before = intake.receipts(who, id).stream()
                .filter(receipt -> receipt.hash().equals(body.submission().hash()))
                .findFirst();
        return before.map(Attempt::done)
                .orElseGet(() -> attempt(who, body))
                .fold(
                        receipt -> json(HttpStatus.OK, new Answer(MARK, id, receipt, List.of())),
                        reasons -> refused(HttpStatus.UNPROCESSABLE_CONTENT, id, reasons));
    }

    private Attempt<CaseReceipt> attempt(SignedIn who, CaseBody body) {
        Optional<UUID> programme = body.typed().id("programme").filter(id -> who.has(Role.TRAINEE, id));
        if (programme.isEmpty()) {
            return Attempt.refused(Refusal.of("refusal.case.programme"));
        }
        CaseEntryInput input = new CaseEntryInput(who, programme.get(), body.typed(), people.sites(), false);
        Optional<CaseEntry> entry = input.complete();
        return entry.map(complete -> intake.enter(who, body.submission(), complete, CaseBody.levels(body.typed()))
                        .fold(Attempt::done, reasons -> Attempt.<CaseReceipt>refused(input.reasons(reasons))))
                .orElseGet(() -> Attempt.refused(input.reasons(cases.against(who, input.answers()))));
    }

    @GetMapping("/at-the-table/cases/{submission}")
    Receipt receipt(@AuthenticationPrincipal SignedIn who, @PathVariable UUID submission) {
        return new Receipt("case-receipt", submission, intake.receipts(who, submission));
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    ResponseEntity<Object> notFound() {
        return ResponseEntity.notFound().build();
    }

    private ResponseEntity<Object> refused(HttpStatus status, @Nullable UUID submission, List<Refusal> reasons) {
        return json(status, new Answer(MARK, submission, null, wording.errors(reasons)));
    }

    private static ResponseEntity<Object> json(HttpStatus status, Object body) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .body(body);
    }
}
