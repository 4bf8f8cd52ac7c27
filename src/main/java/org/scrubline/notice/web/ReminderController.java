package org.scrubline.notice.web;

import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.Sheets;
import org.scrubline.notice.NoticeSettings;
import org.scrubline.notice.Reminders;
import org.scrubline.notice.Stage;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FormView;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Rubrics;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Scores a supervisor was reminded of, and how they want to be reminded. */
@Controller
class ReminderController {

    private static final int HOURS = 24;

    private final Reminders reminders;
    private final Sheets sheets;
    private final Rubrics rubrics;
    private final Wording wording;

    ReminderController(Reminders reminders, Sheets sheets, Rubrics rubrics, Wording wording) {
        this.reminders = reminders;
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.wording = wording;
    }

    /** A score that is missing. */
    record Line(String href, String label, String note, String stage) {}

    /** An hour to choose. */
    record Hour(String value, String label) {}

    @GetMapping("/reminders")
    ModelAndView list(@AuthenticationPrincipal SignedIn who) {
        Map<UUID, Stage> reached = reminders.of(supervisor(who).personId());
        List<Line> lines = sheets.toScore(who.personId()).stream()
                .filter(open -> reached.containsKey(open.sheetId()))
                .map(open -> line(open, reached))
                .toList();
        return new ModelAndView("notice/reminders", "lines", lines);
    }

    private Line line(OpenSheet open, Map<UUID, Stage> reached) {
        return new Line(
                "/sheets/" + open.sheetId(),
                wording.text(
                        "notice.line",
                        open.traineeName(),
                        rubrics.current(open.surgicalCase().procedureCode())
                                .rubric()
                                .title()),
                wording.text(
                        "notice.note",
                        open.surgicalCase().reference(),
                        open.age().toDays()),
                wording.text("notice.stage." + reached.get(open.sheetId())));
    }

    @GetMapping("/my-notices")
    ModelAndView form(@AuthenticationPrincipal SignedIn who) {
        NoticeSettings kept = reminders.settings(supervisor(who).personId());
        Map<String, String> values = new LinkedHashMap<>();
        values.put("quietFrom", kept.quietFrom().toString());
        values.put("quietUntil", kept.quietUntil().toString());
        values.put("digestHour", Integer.toString(kept.digestHour()));
        values.put("mailOn", Boolean.toString(kept.mailOn()));
        values.put("mailAddress", kept.mailAddress());
        return page(values, List.of());
    }

    @PostMapping("/my-notices")
    ModelAndView change(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam Map<String, String> typed,
            RedirectAttributes redirect) {
        supervisor(who);
        return read(typed)
                .<Attempt<NoticeSettings>>fold(wanted -> reminders.change(who, wanted), Attempt::refused)
                .fold(
                        kept -> {
                            redirect.addFlashAttribute("flash", wording.text("notice.kept"));
                            return new ModelAndView("redirect:/my-notices");
                        },
                        reasons -> {
                            ModelAndView page = page(typed, reasons);
                            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                            return page;
                        });
    }

    private static Attempt<NoticeSettings> read(Map<String, String> typed) {
        List<Refusal> wrong = new ArrayList<>();
        Optional<LocalTime> from = time(typed, "quietFrom", wrong);
        Optional<LocalTime> until = time(typed, "quietUntil", wrong);
        String hour = typed.getOrDefault("digestHour", "");
        if (!hour.matches("\\d{1,2}")) {
            wrong.add(Refusal.at("digestHour", "notice.refusal.hour"));
        }
        return wrong.isEmpty()
                ? Attempt.done(new NoticeSettings(
                        from.orElseThrow(),
                        until.orElseThrow(),
                        Integer.parseInt(hour),
                        "true".equals(typed.get("mailOn")),
                        typed.getOrDefault("mailAddress", "")))
                : Attempt.refused(wrong);
    }

    private static Optional<LocalTime> time(Map<String, String> typed, String field, List<Refusal> wrong) {
        try {
            return Optional.of(LocalTime.parse(typed.getOrDefault(field, "")));
        } catch (DateTimeParseException e) {
            wrong.add(Refusal.at(field, "notice.refusal.time"));
            return Optional.empty();
        }
    }

    private ModelAndView page(Map<String, String> values, List<Refusal> reasons) {
        ModelAndView page = new ModelAndView("notice/my-notices");
        page.addObject("form", new FormView(values, wording.errors(reasons)));
        page.addObject(
                "hours",
                IntStream.range(0, HOURS)
                        .mapToObj(hour -> new Hour(Integer.toString(hour), "%02d:00".formatted(hour)))
                        .toList());
        page.addObject("mailOn", "true".equals(values.get("mailOn")));
        page.addObject("mailIsSet", reminders.mailIsSet());
        return page;
    }

    private static SignedIn supervisor(SignedIn who) {
        if (!who.has(Role.SUPERVISOR)) {
            throw new NotFound();
        }
        return who;
    }
}
