import type { Page } from 'playwright';

/** Cuts every socket of a page while it has no network, and gives the network back once the page has seen it: a browser that is set offline keeps the sockets it has. */
export async function dropLine(page: Page, isSeen: () => Promise<void>): Promise<void> {
  await page.context().setOffline(true);
  const session = await page.context().newCDPSession(page);
  const { result } = await session.send('Runtime.evaluate', { expression: 'WebSocket.prototype' });
  if (result.objectId === undefined) throw new Error('The page has no sockets to speak of');
  const { objects } = await session.send('Runtime.queryObjects', { prototypeObjectId: result.objectId });
  if (objects.objectId === undefined) throw new Error('The page has no socket');
  await session.send('Runtime.callFunctionOn', {
    objectId: objects.objectId,
    functionDeclaration: 'function () { for (const socket of this) socket.close(); }',
  });
  await session.detach();
  await isSeen();
  await page.context().setOffline(false);
}
