import { expect, test } from '@playwright/test';

test('the page is sent with a policy that lets no other page frame it', async ({ request }) => {
  const response = await request.get('/');
  const policy = response.headers()['content-security-policy'] ?? '';
  expect(policy.split('; ')).toContain("frame-ancestors 'none'");
  expect(policy).toContain("default-src 'none'");
  // Browsers heed it in a header only, and complain of it in a meta tag.
  const html = await response.text();
  expect(html).toContain("default-src 'none'");
  expect(html).not.toContain('frame-ancestors');
});
