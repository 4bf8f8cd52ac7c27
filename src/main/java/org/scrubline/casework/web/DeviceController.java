package org.scrubline.casework.web;

import java.util.List;
import java.util.UUID;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.SheetReceipt;
import org.scrubline.casework.Sheets;
import org.scrubline.people.People;
import org.scrubline.people.Site;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** What a device needs to score sheets without a network, and what the server has of them. */
@RestController
class DeviceController {

    private final Drafts drafts;
    private final Sheets sheets;
    private final People people;
    private final TableWords patterns;
    private final SheetWords words;

    DeviceController(Drafts drafts, Sheets sheets, People people, TableWords patterns, SheetWords words) {
        this.drafts = drafts;
        this.sheets = sheets;
        this.people = people;
        this.patterns = patterns;
        this.words = words;
    }

    /** The sheets this person may write on. */
    record SheetList(String scrubline, List<UUID> sheets) {}

    /**
     * What the server has of a sheet.
     *
     * @param hash SHA-256 of the canonical JSON of {@link SheetImage}, version and all
     * @param taps ids of every tap applied
     */
    record Receipt(String scrubline, UUID sheet, int version, String hash, List<UUID> taps) {}

    @GetMapping("/at-the-table/sheets")
    SheetList list(@AuthenticationPrincipal SignedIn who) {
        List<UUID> open = who.has(Role.SUPERVISOR)
                ? sheets.toScore(who.personId()).stream()
                        .map(OpenSheet::sheetId)
                        .toList()
                : List.of();
        return new SheetList("sheets", open);
    }

    @GetMapping("/sheets/{id}/package")
    SheetPackage show(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        Draft draft = words.nameless(drafts.open(who, id));
        SheetFacts facts = SheetFacts.of(draft, patterns.patterns());
        String caption = caption(draft);
        String shape = CanonicalJson.sha256(CanonicalJson.of(List.of(facts, caption)));
        return new SheetPackage("package", id, SheetImage.of(draft.sheet()), facts, caption, shape);
    }

    @GetMapping("/sheets/{id}/receipt")
    Receipt receipt(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        SheetReceipt receipt = sheets.receipt(who, id);
        SheetImage image = SheetImage.of(receipt.sheet());
        String hash = CanonicalJson.sha256(CanonicalJson.of(image));
        return new Receipt("receipt", id, image.version(), hash, receipt.taps());
    }

    private String caption(Draft draft) {
        String site = people.site(draft.surgicalCase().siteId()).map(Site::code).orElseThrow(NotFound::new);
        return words.say(
                "sheet.table.caption",
                draft.surgicalCase().reference(),
                draft.rubric().title(),
                site,
                words.endOf(draft.surgicalCase()));
    }
}
