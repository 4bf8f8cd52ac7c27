package org.scrubline.provision.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.provision.ProvisionedUser;
import org.scrubline.provision.Provisioning;
import org.scrubline.provision.UserFilter;
import org.scrubline.provision.Wanted;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** People, as the organisation's directory reads and keeps them. The organisation is the token's, never the body's. */
@RestController
@RequestMapping(ScimEntrance.BASE + "/Users")
class ScimUsersController {

    /** People on one page of a list. */
    static final int MOST = 200;

    private static final int USUAL = 100;

    private final Provisioning provisioning;
    private final ScimRefusals refusals;
    private final String base;

    ScimUsersController(
            Provisioning provisioning, ScimRefusals refusals, @Value("${scrubline.web.origin}") String origin) {
        this.provisioning = provisioning;
        this.refusals = refusals;
        this.base = origin.strip().replaceFirst("/+$", "") + ScimEntrance.BASE;
    }

    @GetMapping
    ResponseEntity<String> list(
            @RequestParam(defaultValue = "") String filter,
            @RequestParam(defaultValue = "1") String startIndex,
            @RequestParam(defaultValue = "" + USUAL) String count) {
        UserFilter chosen = ScimFilter.read(filter);
        int start = Math.max(1, number(startIndex));
        int most = Math.min(MOST, Math.max(0, number(count)));
        List<ProvisionedUser> page = provisioning.page(chosen, start - 1, most);
        return ScimJson.answer(ScimJson.list(
                provisioning.count(chosen),
                start,
                page.stream().map(user -> ScimUser.of(user, base)).toList()));
    }

    @PostMapping
    ResponseEntity<String> create(HttpServletRequest request) throws IOException {
        Wanted wanted = ScimUser.wanted(ScimJson.read(request.getInputStream()));
        ProvisionedUser user = done(provisioning.create(wanted));
        return ResponseEntity.created(URI.create(base + "/Users/" + user.id()))
                .contentType(ScimJson.TYPE)
                .body(ScimUser.of(user, base).toString());
    }

    @GetMapping("/{id}")
    ResponseEntity<String> read(@PathVariable UUID id) {
        return answer(provisioning.user(id));
    }

    @PutMapping("/{id}")
    ResponseEntity<String> replace(@PathVariable UUID id, HttpServletRequest request) throws IOException {
        provisioning.user(id);
        return answer(done(provisioning.change(id, ScimUser.replaced(ScimJson.read(request.getInputStream())))));
    }

    @PatchMapping("/{id}")
    ResponseEntity<String> change(@PathVariable UUID id, HttpServletRequest request) throws IOException {
        provisioning.user(id);
        return answer(done(provisioning.change(id, ScimPatch.wanted(ScimJson.read(request.getInputStream())))));
    }

    @DeleteMapping("/{id}")
    ResponseEntity<Void> remove(@PathVariable UUID id) {
        provisioning.remove(id);
        return ResponseEntity.noContent().build();
    }

    private ResponseEntity<String> answer(ProvisionedUser user) {
        return ScimJson.answer(ScimUser.of(user, base));
    }

    private ProvisionedUser done(Attempt<ProvisionedUser> attempt) {
        return attempt.fold(user -> user, reasons -> {
            throw refusals.error(reasons.get(0));
        });
    }

    private static int number(String typed) {
        try {
            return Integer.parseInt(typed.strip());
        } catch (NumberFormatException e) {
            throw ScimError.invalid("invalidValue", "startIndex and count are whole numbers.");
        }
    }
}
