package org.scrubline.platform.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.resource.VersionResourceResolver;

/**
 * Serves all modules under one version in their path, made of all their content: a module that imports another by its
 * place beside it gets the one it was written with, however long either is cached.
 */
@Configuration(proxyBeanMethods = false)
class ScriptFolder implements WebMvcConfigurer {

    private static final String ROOT = "classpath:/static/js/";
    private static final int LENGTH = 12;

    private final List<String> files;
    private final String version;

    ScriptFolder() {
        List<Resource> modules = modules();
        files = modules.stream().map(ScriptFolder::path).toList();
        version = hash(modules);
    }

    /** Paths of all modules, such as {@code /js/phases.js}. */
    List<String> files() {
        return files;
    }

    /** Twelve hexadecimal digits that change with any module. */
    String version() {
        return version;
    }

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        registry.addResourceHandler("/js/**")
                .addResourceLocations(ROOT)
                .setCacheControl(CacheControl.maxAge(Duration.ofDays(365)).cachePublic())
                .resourceChain(true)
                .addResolver(new VersionResourceResolver().addFixedVersionStrategy(version, "/**"));
    }

    private static List<Resource> modules() {
        try {
            return Arrays.stream(new PathMatchingResourcePatternResolver().getResources(ROOT + "**/*.js"))
                    .sorted(Comparator.comparing(ScriptFolder::path))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String path(Resource module) {
        try {
            String url = module.getURL().toString();
            return url.substring(url.lastIndexOf("/static/js/") + "/static".length());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String hash(List<Resource> modules) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Resource module : modules) {
                digest.update(path(module).getBytes(StandardCharsets.UTF_8));
                digest.update(module.getContentAsByteArray());
            }
            return HexFormat.of().formatHex(digest.digest()).substring(0, LENGTH);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every JDK", e);
        }
    }
}
