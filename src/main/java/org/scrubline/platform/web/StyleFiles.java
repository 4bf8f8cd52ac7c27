package org.scrubline.platform.web;

import java.time.Duration;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.resource.VersionResourceResolver;

/**
 * Serves the styles, each under a version of its own content, and the mark. Only their paths are looked up among the files:
 * with one handler for every path each link of a page would be, which took more time than all the rest of a large page.
 */
@Configuration(proxyBeanMethods = false)
class StyleFiles implements WebMvcConfigurer {

    private static final String ROOT = "classpath:/static/";

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        registry.addResourceHandler("/css/**")
                .addResourceLocations(ROOT + "css/")
                .setCacheControl(CacheControl.maxAge(Duration.ofDays(365)).cachePublic())
                .resourceChain(true)
                .addResolver(new VersionResourceResolver().addContentVersionStrategy("/**"));
        registry.addResourceHandler("/mark.svg")
                .addResourceLocations(ROOT)
                .setCacheControl(CacheControl.maxAge(Duration.ofDays(1)).cachePublic())
                .resourceChain(true);
    }
}
