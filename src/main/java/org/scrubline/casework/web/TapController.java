package org.scrubline.casework.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/** One tap on the sheet at a time. An answer of 200 means the change is committed. */
@RestController
class TapController {

    /** Attribute of a request that holds the id of the tap it carries. */
    private static final String TAP = TapController.class.getName();

    private final Drafts drafts;
    private final Sheets sheets;
    private final TapAnswers answers;
    private final SheetWords words;

    TapController(Drafts drafts, Sheets sheets, TapAnswers answers, SheetWords words) {
        this.drafts = drafts;
        this.sheets = sheets;
        this.answers = answers;
        this.words = words;
    }

    /** Why a tap was not applied, in sentences; {@code tap} is null when none could be read. */
    record Problem(String scrubline, @Nullable UUID tap, List<String> reasons, String back) {}

    @PostMapping(path = "/sheets/{id}/taps")
    ResponseEntity<Object> tap(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, HttpServletRequest request)
            throws IOException {
        Optional<TapBody> body = TapBody.read(request.getInputStream());
        body.ifPresent(tap -> request.setAttribute(TAP, tap.tap()));
        if (body.filter(tap -> madeByAnother(who, tap)).isPresent()) {
            return ResponseEntity.status(HttpStatus.FORBIDDEN).build();
        }
        Draft draft = drafts.open(who, id);
        return body.isEmpty()
                ? problem(request, HttpStatus.BAD_REQUEST, List.of(words.say("sheet.tap.unreadable")), "")
                : apply(who, draft, body.get(), request);
    }

    /** On a shared device somebody else may have logged in since: the tap waits there for the one who made it. */
    private static boolean madeByAnother(SignedIn who, TapBody tap) {
        return !tap.person().isEmpty() && !tap.person().equals(who.personId().toString());
    }

    private ResponseEntity<Object> apply(SignedIn who, Draft draft, TapBody tap, HttpServletRequest request) {
        SheetReading reading = draft.read(tap.sent(), TapEvent.id(draft.sheet().id(), tap.tap()));
        if (!reading.refusals().isEmpty()) {
            return refused(request, reading.refusals());
        }
        return sheets.tap(who, draft.sheet().id(), tap.tap(), tap.version(), reading.change())
                .fold(
                        sheet -> json(HttpStatus.OK, answers.of(tap.tap(), draft.with(sheet), reading)),
                        reasons -> refused(request, reasons));
    }

    private ResponseEntity<Object> refused(HttpServletRequest request, List<Refusal> reasons) {
        return problem(
                request,
                HttpStatus.UNPROCESSABLE_CONTENT,
                reasons.stream().map(words::say).distinct().toList(),
                "");
    }

    @ExceptionHandler
    ResponseEntity<Object> stale(StaleData stale, HttpServletRequest request) {
        List<String> lines = stale.lines().stream()
                .map(line -> words.say("sheet.tap.stale-line", line.label(), line.yours(), line.stored()))
                .toList();
        return problem(request, HttpStatus.CONFLICT, lines, stale.back());
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    ResponseEntity<Object> notFound(HttpServletRequest request) {
        return problem(request, HttpStatus.NOT_FOUND, List.of(words.say("sheet.tap.gone")), "");
    }

    private static ResponseEntity<Object> problem(
            HttpServletRequest request, HttpStatus status, List<String> reasons, String back) {
        UUID tap = (UUID) request.getAttribute(TAP);
        return json(status, new Problem(TapAnswer.MARK, tap, reasons, back));
    }

    private static ResponseEntity<Object> json(HttpStatus status, Object body) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .body(body);
    }
}
